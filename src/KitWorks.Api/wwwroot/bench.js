// What pages can do better with script. Every form works without: script only sends it without leaving the page, keeps the
// field that a scanner types into in focus, and sounds the answer.
"use strict";

/** Two short tones, rising for yes and falling for no; a bench is loud and nobody looks up. */
const tones = (() => {
  let audio;
  const play = (pitches) => {
    audio ??= new AudioContext();
    pitches.forEach((pitch, i) => {
      const note = audio.createOscillator(), loudness = audio.createGain(), at = audio.currentTime + i * 0.13;
      note.type = "triangle";
      note.frequency.value = pitch;
      loudness.gain.setValueAtTime(0.25, at);
      loudness.gain.exponentialRampToValueAtTime(0.001, at + 0.12);
      note.connect(loudness).connect(audio.destination);
      note.start(at);
      note.stop(at + 0.13);
    });
  };
  return { good: () => play([660, 990]), bad: () => play([220, 160, 160]) };
})();

/** Puts a fresh copy of a region in place of the old one, and keeps the focus where it was. */
function replace(region, page) {
  const fresh = page.getElementById(region.id);
  if (!fresh) return location.reload();
  const focused = document.activeElement, kept = region.contains(focused) ? focused.id || focused.name : null;
  region.replaceWith(document.adoptNode(fresh));
  if (kept) (document.getElementById(kept) ?? fresh.querySelector(`[name="${CSS.escape(kept)}"]`))?.focus({ preventScroll: true });
  ready(fresh);
  document.dispatchEvent(new CustomEvent("fresh", { detail: fresh }));
}

/** Sends a form and shows the answer in its region; a later sending of the same form gives an earlier one up. */
async function send(form, submitter) {
  const region = document.getElementById(form.dataset.live);
  form.sending?.abort();
  const sending = form.sending = new AbortController();
  const data = new FormData(form, submitter);
  const address = new URL(submitter?.getAttribute("formaction") ?? form.getAttribute("action") ?? "", location.href), post = form.method === "post";
  if (!post) address.search = new URLSearchParams(data);
  region.setAttribute("aria-busy", "true");
  try {
    const answer = await fetch(address, { method: form.method, body: post ? data : undefined, signal: sending.signal });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (answer.redirected && new URL(answer.url).pathname !== address.pathname) return location.assign(answer.url);
    if (!post) history.replaceState(null, "", address);
    replace(region, page);
    const verdict = document.querySelector("[data-tone]");
    if (post && verdict) tones[verdict.dataset.tone]?.();
  } catch (wrong) {
    if (wrong.name === "AbortError") return;
    region.removeAttribute("aria-busy");
    form.querySelector("[data-trouble]")?.removeAttribute("hidden");
    if (form.matches(".scan")) tones.bad();
  }
}

document.addEventListener("submit", (event) => {
  const form = event.target;
  // A button with a method of its own leaves the page.
  if (!form.dataset.live || event.submitter?.hasAttribute("formmethod")) return;
  event.preventDefault();
  send(form, event.submitter);
});

// A form that shows its answer at once does so while it is being filled in.
let pause;
document.addEventListener("input", (event) => {
  const form = event.target.form;
  const output = form?.querySelector(`output[for="${CSS.escape(event.target.id)}"]`);
  if (output) output.value = event.target.value;
  if (!form?.matches("[data-at-once]")) return;
  clearTimeout(pause);
  pause = setTimeout(() => form.reportValidity && form.checkValidity() && send(form), 250);
});

// A scanner types wherever the focus is; at the packing page that is always the field for scans.
const typed = (event) => event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey;
document.addEventListener("keydown", (event) => {
  const field = document.querySelector(".scan [name=code]");
  if (!field || event.target === field || !typed(event) || event.target.closest?.("input, select, textarea")) return;
  // The space bar presses the button in focus; no code holds a space.
  if (event.key === " ") return;
  field.value = "";
  field.focus();
});

/** What a region needs when it is new: the field for scans empty and in focus, work that is under way looked at again. */
function ready(region) {
  const field = region.querySelector(".scan [name=code]");
  if (field) {
    field.value = "";
    field.focus({ preventScroll: true });
  }
  const watched = region.matches?.("[data-again]") ? region : region.querySelector("[data-again]");
  if (watched) setTimeout(async () => {
    if (!watched.isConnected || document.hidden) return ready(watched);
    const answer = await fetch(location.href).catch(() => null);
    if (!answer) return ready(watched);
    if (answer.redirected && answer.url !== location.href) return location.assign(answer.url);
    replace(watched, new DOMParser().parseFromString(await answer.text(), "text/html"));
  }, Number(watched.dataset.again) * 1000);
}

document.addEventListener("click", (event) => {
  if (event.target.closest("[data-print]")) print();
});

ready(document.body);
