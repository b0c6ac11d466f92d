// The sample storefront: design, quote with a picture, order. Three requests to the HTTP interface, as any web site may make them.
"use strict";

const front = document.querySelector(".shopfront"), wish = document.getElementById("wish"), buy = document.getElementById("buy");
const offer = document.getElementById("offer"), wait = document.getElementById("wait");
let quote, once;

/** Asks the interface; a no comes back in the shop's own words. */
async function ask(path, body, key) {
  const headers = { Authorization: `Bearer ${front.dataset.key}`, "Content-Type": "application/json" };
  if (key) headers["Idempotency-Key"] = key;
  const answer = await fetch(path, { method: "POST", headers, body: JSON.stringify(body) });
  if (!answer.ok) throw new Error((await answer.json()).detail);
  return answer;
}

function shelterOf(data) {
  const room = `${data.get("room")} m`;
  switch (data.get("form")) {
    case "high": return { kind: "dome", frequency: 3, cut: "5/8", size: { floorDiameter: room } };
    case "long": return { kind: "oblong", size: { length: room } };
    default: return { kind: "dome", frequency: 2, cut: "1/2", size: { floorDiameter: room } };
  }
}

const element = (name, text) => Object.assign(document.createElement(name), { textContent: text });
const metres = (mm) => (mm / 1000).toFixed(2) + " m";

function fact(name, value) {
  const pair = document.createElement("div");
  pair.append(element("dt", name), element("dd", value));
  return pair;
}

wish.addEventListener("submit", async (event) => {
  event.preventDefault();
  const data = new FormData(wish), shelter = shelterOf(data);
  wait.textContent = "One moment …";
  try {
    const design = { shelter, hubSystem: "ring-100", cover: data.get("cover") ? { layers: 1 } : null };
    // Where no pipe passes the shop's screening, the strongest is asked for, and the quote says what to know.
    quote = await (await ask("/api/quotes", { design, quantity: 1 }).catch(() => ask("/api/quotes", { design: { ...design, strutStock: "pvc-42" }, quantity: 1 }))).json();
    const picture = await (await ask("/api/drawings", { shelter, view: "iso" })).blob();
    once = crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`;
    show(URL.createObjectURL(picture));
    wait.textContent = "";
  } catch (no) {
    wait.textContent = no.message;
    offer.hidden = buy.hidden = true;
  }
});

function show(picture) {
  const size = quote.kit.dimensions, image = new Image(), facts = document.createElement("dl");
  image.src = picture;
  image.alt = "Your shelter, drawn from above its front corner.";
  image.className = "drawn";
  facts.className = "facts";
  facts.append(fact("High", metres(size.heightMm)), fact("Long", metres(size.lengthMm)), fact("Wide", metres(size.widthMm)), fact("Struts", quote.kit.totals.struts));
  const price = element("h2", `${quote.price.total.amount} ${quote.price.total.currency}`);
  const when = element("p", `${quote.availability.fromStock ? "From our shelf" : "Made when its parts are in"}, leaves by ${quote.availability.shipBy}.`);
  const notes = document.createElement("ul");
  notes.append(...quote.kit.warnings.map((w) => element("li", w.detail)));
  offer.replaceChildren(price, image, facts, when, notes);
  offer.hidden = buy.hidden = false;
}

buy.addEventListener("submit", async (event) => {
  event.preventDefault();
  const data = new FormData(buy);
  wait.textContent = "One moment …";
  try {
    const customer = { name: data.get("name"), email: data.get("email") || null };
    const order = await (await ask("/api/orders", { quoteId: quote.id, customer }, once)).json();
    wait.textContent = `Thank you. Your order has the number ${order.number}.`;
    wish.hidden = offer.hidden = buy.hidden = true;
  } catch (no) {
    wait.textContent = no.message;
  }
});

wish.room.addEventListener("input", () => { wish.querySelector("output").value = wish.room.value; });
