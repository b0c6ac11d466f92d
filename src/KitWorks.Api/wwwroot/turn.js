// A frame to be turned by hand: its JSON drawn on a canvas, the far struts thin and pale, the near ones strong.
// Drag, or the arrow keys; + and − come nearer and go away. Without script the picture beside it stands.
"use strict";

function turnable(holder) {
  if (holder.dataset.turning) return;
  holder.dataset.turning = "yes";
  const canvas = document.createElement("canvas");
  const still = holder.querySelector("img");
  let frame, round = 0.6, over = 0.35, near = 1;
  const view = { role: "img", tabIndex: 0 };
  Object.assign(canvas, view);
  canvas.setAttribute("role", "application");
  canvas.setAttribute("aria-label", `${still.alt} Turn it with the arrow keys; plus and minus change the distance.`);
  canvas.setAttribute("aria-roledescription", "turning picture");

  fetch(holder.dataset.turn).then((answer) => answer.ok ? answer.json() : null).then((found) => {
    if (!found) return;
    frame = found;
    still.replaceWith(canvas);
    holder.querySelector("[data-turn-hint]")?.removeAttribute("hidden");
    new ResizeObserver(draw).observe(canvas);
  }).catch(() => {});

  function draw() {
    const width = canvas.clientWidth, height = canvas.clientHeight, dots = devicePixelRatio || 1;
    if (!width || !frame) return;
    canvas.width = width * dots;
    canvas.height = height * dots;
    const pen = canvas.getContext("2d");
    pen.scale(dots, dots);
    const xs = frame.nodes.map((n) => n[0]), ys = frame.nodes.map((n) => n[1]), zs = frame.nodes.map((n) => n[2]);
    const middle = [mid(xs), mid(ys), mid(zs)];
    const reach = Math.max(...frame.nodes.map((n) => Math.hypot(n[0] - middle[0], n[1] - middle[1], n[2] - middle[2])));
    const scale = Math.min(width, height) * 0.52 / reach * near;
    const [cr, sr, co, so] = [Math.cos(round), Math.sin(round), Math.cos(over), Math.sin(over)];
    const seen = frame.nodes.map(([x, y, z]) => {
      const [a, b, c] = [x - middle[0], y - middle[1], z - middle[2]];
      const across = a * cr - b * sr, deep = a * sr + b * cr;
      const depth = deep * co - c * so, k = 1 / (1 + depth / reach * 0.18);
      return [width / 2 + across * scale * k, height / 2 - (c * co + deep * so) * scale * k, depth / reach];
    });
    const struts = frame.struts.map(([from, to, type]) => ({ from: seen[from], to: seen[to], type, depth: seen[from][2] + seen[to][2] }));
    struts.sort((a, b) => b.depth - a.depth);
    pen.lineCap = "round";
    for (const strut of struts) {
      const front = (2 - strut.depth) / 4;
      pen.globalAlpha = 0.3 + 0.7 * Math.min(1, Math.max(0, front));
      line(pen, strut, "#17212b", 1.4 + 5 * front);
      line(pen, strut, frame.colours[strut.type], 0.6 + 3.6 * front);
    }
    pen.globalAlpha = 1;
  }

  const line = (pen, strut, colour, width) => {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    pen.moveTo(strut.from[0], strut.from[1]);
    pen.lineTo(strut.to[0], strut.to[1]);
    pen.stroke();
  };
  const mid = (values) => (Math.min(...values) + Math.max(...values)) / 2;
  const turn = (dx, dy) => {
    round += dx;
    over = Math.min(1.5, Math.max(-0.3, over + dy));
    draw();
  };

  canvas.addEventListener("pointerdown", (event) => canvas.setPointerCapture(event.pointerId));
  canvas.addEventListener("pointermove", (event) => event.buttons && turn(-event.movementX * 0.01, event.movementY * 0.01));
  canvas.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: [0.15, 0], ArrowRight: [-0.15, 0], ArrowUp: [0, -0.1], ArrowDown: [0, 0.1] }[event.key];
    if (step) turn(...step);
    else if (event.key === "+" || event.key === "-") near = Math.min(3, Math.max(0.5, near * (event.key === "+" ? 1.15 : 1 / 1.15))), draw();
    else return;
    event.preventDefault();
  });
}

const find = (region) => region.querySelectorAll("[data-turn]").forEach(turnable);
document.addEventListener("fresh", (event) => find(event.detail));
find(document);
