// Labels photographs one after the other by keys. What becomes of each is worked out by the server alone.
import { Choice, fits } from "./choice.js";
import { Crop } from "./crop.js";
import { Sitting } from "./sitting.js";
import { TeethField } from "./teeth-field.js";

const page = document.getElementById("sorting");
const byId = (id) => document.getElementById(id);
const sitting = new Sitting(page, byId("ended"), byId("server-busy"));
const correcting = page.dataset.mode === "correct";
const form = byId("answers");
const previewed = byId("previewed");
const edges = byId("edges");
const picture = byId("window");
const visit = byId("visit");
const view = byId("view");
const take = byId("take");
const buttons = [...document.querySelectorAll(".order button")];
const FACTS = ["view", "mirror", "incisors", "up", "teeth", "crop", "trim", "stage", "treatment", "note", "accessories"];
const said = new Map(buttons.map((button) => [button.dataset.key, first(button)]));
let current = "";
let opened = 0;
let running = null;
let fresh = false;
let pictured = false;
let filing = false;
// What answers or takes: out of reach until the picture that it is about is seen.
const answering = [edges, form, byId("on-chart"), document.querySelector("details.off")].filter(Boolean);

function first(button) {
  const words = { state: "open", shown: "", answered: "" };
  for (const [name, value] of new URLSearchParams(button.dataset.given)) words[name] = value;
  return words;
}

function words() {
  return said.get(current);
}

// What becomes of the photograph by what is said of it now; none while that is being worked out.
function part() {
  return fresh ? previewed.querySelector(".preview") : null;
}

function within(reach) {
  answering.forEach((one) => { one.inert = !reach; });
  edges.setAttribute("aria-busy", String(!reach));
}

function isWithin() {
  return !form.inert;
}

// The questions, in the order in which they are asked.

const views = [...byId("view-list").children];

new Choice(
  view,
  byId("view-list"),
  (typed) => () => views.forEach((one) => { one.hidden = !fits(typed, one.dataset.phrases); }),
  async (option) => {
    if (words().view !== option.dataset.value) Object.assign(words(), { view: option.dataset.value, incisors: "", up: "" });
    view.value = option.textContent;
    await thenOnward(changed());
  },
);
view.addEventListener("change", () => {
  if (!view.value.trim()) say("view", "");
  else view.value = named(words().view);
});

function named(key) {
  return views.find((one) => one.dataset.value === key)?.textContent ?? key ?? "";
}

// True when the preview by this answer is seen.
async function say(name, value) {
  if (!isWithin()) return false;
  words()[name] = value;
  return changed();
}

// To the next question, unless somebody went elsewhere meanwhile: their keys must not answer it.
async function thenOnward(answered, how) {
  const from = document.activeElement;
  if (await answered && isStill(from)) onward(how);
}

function isStill(from) {
  return document.activeElement === from || document.activeElement === document.body;
}

const mirror = byId("mirror");
mirror.addEventListener("change", (event) => say("mirror", event.target.value));
mirror.addEventListener("keydown", async (event) => {
  const chosen = mirror.querySelectorAll("input")[Number(event.key) - 1];
  if (!chosen || !isWithin() || isHeld(event)) return;
  event.preventDefault();
  chosen.checked = true;
  await thenOnward(say("mirror", chosen.value));
});

// A key with another one, or one that is held down, is no answer.
function isHeld(event) {
  return event.ctrlKey || event.altKey || event.metaKey || event.repeat;
}

const ARROWS = { ArrowUp: "top", ArrowDown: "bottom", ArrowLeft: "left", ArrowRight: "right" };

// An edge is pressed; pressed again, it is no answer any more.
edges.addEventListener("click", async (event) => {
  const edge = event.target.closest(".edge")?.dataset.edge;
  const name = part()?.dataset.edge;
  if (!edge || !name || event.detail > 1) return;
  // Whoever pressed it with finger or mouse looks at the picture: it must not scroll away.
  await thenOnward(say(name, words()[name] === edge ? "" : edge), { preventScroll: event.detail > 0 });
});
// Arrow keys go from edge to edge, and answer on the picture alone: there only where the incisors are asked for.
edges.addEventListener("keydown", async (event) => {
  const edge = ARROWS[event.key];
  if (!edge || isHeld(event)) return;
  if (event.target.matches(".edge")) {
    event.preventDefault();
    edges.querySelector(`.edge.${edge}`).focus();
  } else if (event.target === picture && part()?.dataset.edge === "incisors") {
    event.preventDefault();
    await thenOnward(say("incisors", edge));
  }
});

const teeth = new TeethField(byId("teeth"), byId("on-chart"), () => say("teeth", byId("teeth").value.trim()));

for (const name of ["stage", "treatment", "note"]) {
  byId(name).addEventListener("change", () => say(name, byId(name).value));
}

const crop = new Crop(
  document.querySelector(".cuts"), byId("frame"), document.querySelector(".canvas"), byId("size"),
  () => say("crop", crop.words()),
);
byId("whole").addEventListener("click", () => say("crop", ""));

// What becomes of it by what is said: the server's answer, never one of our own.

async function changed() {
  Object.assign(words(), { state: "open", shown: "", answered: "" });
  return preview();
}

// True if it is seen; false if another one was asked for meanwhile, or none came.
async function preview() {
  stop();
  const own = new AbortController();
  running = own;
  const query = new URLSearchParams(FACTS.filter((fact) => words()[fact]).map((fact) => [fact, words()[fact]]));
  if (visit.dataset.visit) query.set("visit", visit.dataset.visit);
  let found;
  try {
    const answer = await sitting.fetch(`/preview/${current}?${query}`, { signal: own.signal });
    found = answer.ok ? await answer.text() : null;
  } catch {
    found = null;
  }
  if (own !== running) return false;
  if (found === null) {
    previewed.textContent = previewed.dataset.failed;
    previewed.removeAttribute("aria-busy");
    return false;
  }
  // The server escapes every value that it puts into this part of a page.
  previewed.innerHTML = found;
  // Nothing can be taken before the picture itself is seen.
  const seen = await previewed.querySelector(".window img")?.decode().then(() => true, () => false) ?? false;
  if (own !== running) return false;
  pictured = seen;
  fresh = true;
  previewed.removeAttribute("aria-busy");
  show();
  return true;
}

// What was previewed counts no more.
function stop() {
  running?.abort();
  running = null;
  fresh = false;
  pictured = false;
  take.disabled = true;
  previewed.setAttribute("aria-busy", "true");
}

function show() {
  const found = part();
  const facts = words();
  const name = found?.dataset.edge ?? "up";
  const question = byId("edge-question");
  question.textContent = question.dataset[name];
  edges.querySelectorAll(".edge").forEach((edge) => {
    edge.setAttribute("aria-pressed", String(facts[name] === edge.dataset.edge));
  });
  const places = found?.dataset.shown ? {
    across: found.dataset.across.split(",").map(Number), down: found.dataset.down.split(",").map(Number),
    wide: Number(found.dataset.wide), high: Number(found.dataset.high),
  } : null;
  crop.allow(places);
  crop.set(facts.crop);
  if (found?.dataset.shown) teeth.tick(found.dataset.iso);
  document.querySelectorAll("[data-asks]").forEach((one) => delete one.dataset.asks);
  ask()?.closest(".combo, .choice, .asked-side")?.setAttribute("data-asks", "");
  settle();
}

function settle() {
  const found = part();
  const despite = byId("despite");
  take.disabled = !isWithin() || !found?.dataset.shown || !pictured || (despite !== null && !despite.checked);
}

previewed.addEventListener("change", settle);
previewed.addEventListener("click", async (event) => {
  if (!event.target.closest("[data-trim]") || !part()) return;
  await thenOnward(say("trim", "yes"));
});

function ask() {
  const wanted = part()?.dataset.ask;
  if (wanted === "view") return view;
  if (wanted === "mirror") return mirror.querySelector("input:checked") ?? mirror.querySelector("input");
  if (wanted === "incisors") return picture;
  return null;
}

// To what has to be said next: a question, a doubt, or that it is right.
function onward(how) {
  const despite = byId("despite");
  const found = part();
  const trouble = previewed.querySelector(".trouble button") ?? edges.querySelector(".edge.top");
  (ask() ?? (!found?.dataset.shown ? trouble : despite && !despite.checked ? despite : take)).focus(how);
}

document.addEventListener("keydown", (event) => {
  if (byId("ended").open || !(page.contains(event.target) || event.target === document.body)) return;
  if (event.key === "Enter" && event.repeat) {
    event.preventDefault();
  } else if (event.key === "PageDown" || event.key === "PageUp") {
    event.preventDefault();
    const at = buttons.findIndex((one) => one.dataset.key === current) + (event.key === "PageDown" ? 1 : -1);
    if (buttons[at]) open(buttons[at]);
  } else if (event.key === "Enter" && event.target.id === "despite") {
    event.preventDefault();
    event.target.checked = true;
    settle();
    take.focus();
  }
});

form.addEventListener("submit", (event) => {
  event.preventDefault();
  if (!isWithin()) return;
  if (take.disabled) onward();
  else ready();
});

function ready() {
  const found = part();
  Object.assign(words(), { state: "ready", shown: found.dataset.shown, answered: found.dataset.kinds });
  tell();
  const next = buttons.slice(buttons.findIndex((one) => one.dataset.key === current) + 1)
    .concat(buttons).find((one) => said.get(one.dataset.key).state === "open");
  if (next) open(next);
  else if (!visit.dataset.visit) visit.focus();
  else byId(correcting ? "why" : "file").focus();
}

// One photograph after the other.

async function open(button) {
  const from = document.activeElement;
  // What was typed so far is said of the photograph on which it was typed.
  if (form.contains(from)) from.blur();
  opened += 1;
  const turn = opened;
  current = button.dataset.key;
  stop();
  within(false);
  previewed.replaceChildren();
  byId("frame").hidden = true;
  byId("asked-failed").hidden = true;
  buttons.forEach((one) => one.toggleAttribute("aria-current", one === button));
  document.querySelectorAll("[data-about]").forEach((one) => { one.hidden = one.dataset.about !== current; });
  byId("place").textContent = `${buttons.indexOf(button) + 1} / ${buttons.length}`;
  const facts = words();
  fill(facts);
  edges.querySelectorAll(".edge").forEach((one) => one.setAttribute("aria-pressed", "false"));
  if (byId("off")) byId("off").action = `/reject/${current}`;
  let [seen, made] = await Promise.all([pictureOf(current), preview()]);
  // It may have been asked for while nobody was signed in.
  if (turn === opened && !seen && made) seen = await pictureOf(current);
  if (turn !== opened) return;
  if (!seen) {
    byId("asked-failed").hidden = false;
    return;
  }
  fill(facts);
  within(true);
  if (isOtherThanTaken(facts)) {
    Object.assign(facts, { state: "open", shown: "", answered: "" });
    tell();
  }
  settle();
  if (!isStill(from)) return;
  if (facts.view && facts.mirror) onward();
  else (facts.view ? ask() ?? view : view).focus();
}

function fill(facts) {
  view.value = named(facts.view);
  mirror.querySelectorAll("input").forEach((one) => { one.checked = one.value === facts.mirror; });
  for (const name of ["teeth", "stage", "treatment", "note"]) byId(name).value = facts[name] ?? "";
}

async function pictureOf(key) {
  const image = byId("asked");
  image.src = `/asked/${key}`;
  return image.decode().then(() => true, () => false);
}

// True if a photograph that was taken would be shown in another way now, or raises other doubts.
function isOtherThanTaken(facts) {
  const found = part();
  return facts.state === "ready" && found !== null
    && (found.dataset.shown !== facts.shown || found.dataset.kinds !== facts.answered);
}

buttons.forEach((button) => button.addEventListener("click", () => open(button)));

function tell() {
  let count = 0;
  for (const button of buttons) {
    const facts = said.get(button.dataset.key);
    const label = button.querySelector(".label");
    label.textContent = facts.state === "open" && !correcting ? label.dataset.empty : named(facts.view);
    button.dataset.state = facts.state;
    if (facts.state === "ready") count += 1;
  }
  const status = byId("ready");
  if (status) {
    const text = count === 0 ? status.dataset.none : count === 1 ? status.dataset.one : status.dataset.many.replace("{0}", count);
    status.textContent = count && !visit.dataset.visit ? `${text} ${status.dataset.visit}` : text;
    byId("file").disabled = filing || !count || !visit.dataset.visit;
  } else {
    // What stands in the field of the visit has to be taken, or what is filed would stay under the visit before.
    const untaken = !visit.dataset.visit && (visit.value.trim() !== "" || visit.defaultValue !== "");
    byId("correct-visit").hidden = !untaken;
    byId("correct-now").disabled = !count || untaken;
  }
  series();
}

// Whose they are. Never chosen by anybody but the person.

new Choice(
  visit,
  byId("visit-list"),
  async (typed, signal) => {
    if (visit.dataset.visit) {
      delete visit.dataset.visit;
      tell();
    }
    const query = new URLSearchParams({ near: current || page.dataset.key, q: typed });
    const answer = await sitting.fetch(`/visits?${query}`, { signal });
    if (!answer.ok) return null;
    const text = await answer.text();
    return () => {
      byId("visit-list").innerHTML = text;
      byId("visit-list").querySelectorAll("[role=option]").forEach((one, at) => { one.id = `visit-${at}`; });
    };
  },
  async (option) => {
    visit.dataset.visit = option.dataset.value;
    visit.value = [...option.children].slice(0, 3).map((one) => one.textContent).join(" · ");
    // Another visit may raise other doubts, also of what was ready.
    for (const facts of said.values()) if (facts.state === "ready") facts.state = "open";
    tell();
    const button = buttons.find((one) => said.get(one.dataset.key).state === "open");
    if (button) await open(button);
  },
  (found) => {
    const state = byId("visit-state");
    const word = typeof found === "string" ? found : found === 1 ? "one" : found ? "many" : "none";
    state.textContent = state.dataset[word].replace("{0}", found);
  },
);

async function series() {
  if (!visit.dataset.visit) {
    byId("series").textContent = "";
    return;
  }
  const query = new URLSearchParams({ visit: visit.dataset.visit });
  for (const facts of said.values()) if (facts.state === "ready" && !correcting) query.append("view", facts.view);
  const answer = await sitting.fetch(`/series?${query}`);
  byId("series").innerHTML = answer.ok ? await answer.text() : "";
}

// Filing: each photograph ends filed or says why not; what was not filed stays as it was said.

function carry(body, key, before) {
  for (const name of [...FACTS, "shown", "answered"]) body.append(before + name, said.get(key)[name] ?? "");
}

// So many photographs, and so many characters, go at once: a request has its limits, a roll has none.
const MOST_AT_ONCE = 25;
const LONGEST_AT_ONCE = 48 * 1024;

function parcels() {
  const all = [];
  let body = null;
  for (const [key, facts] of said) {
    if (facts.state !== "ready") continue;
    const one = new URLSearchParams({ photo: key });
    carry(one, key, key + ".");
    const full = body && (body.getAll("photo").length === MOST_AT_ONCE || `${body}&${one}`.length > LONGEST_AT_ONCE);
    if (!body || full) {
      body = new URLSearchParams({ visit: visit.dataset.visit, person: page.dataset.person });
      all.push(body);
    }
    for (const [name, value] of one) body.append(name, value);
  }
  return all;
}

byId("file")?.addEventListener("click", async () => {
  const outcome = byId("outcome");
  outcome.replaceChildren();
  filing = true;
  byId("file").disabled = true;
  try {
    for (const body of parcels()) {
      if (!await filed(body, outcome)) break;
    }
  } catch {
    outcome.append(Object.assign(document.createElement("p"), { className: "trouble", textContent: outcome.dataset.failed }));
  } finally {
    filing = false;
    tell();
  }
  outcome.focus();
});

// True if each of them was filed or says why not.
async function filed(body, outcome) {
  const answer = await sitting.fetch("/file", { method: "POST", body });
  const part = new DOMParser().parseFromString(await answer.text(), "text/html");
  const told = [...part.querySelectorAll("[data-key]")];
  outcome.append(...(answer.ok ? part.body : part.querySelector("main")).children);
  for (const one of told) {
    const state = one.dataset.state;
    if (state === "filed" || state === "elsewhere") said.get(one.dataset.key).state = state;
    if (state === "refused") said.get(one.dataset.key).state = "open";
  }
  tell();
  return answer.ok;
}

// A form of this page is sent when it is certain that its sitting lasts; what stands here stays until then.
page.addEventListener("submit", async (event) => {
  const sent = event.target;
  if (event.defaultPrevented || sent.method !== "post") return;
  event.preventDefault();
  const trouble = byId("not-sent");
  trouble.hidden = true;
  try {
    await sitting.check();
  } catch {
    sent.append(trouble);
    trouble.hidden = false;
    return;
  }
  if (sent.id === "correct") carryAll();
  sent.submit();
});

function carryAll() {
  const carried = byId("carried");
  carried.replaceChildren();
  const body = new URLSearchParams({ visit: visit.dataset.visit ?? "" });
  carry(body, current, "");
  for (const [name, value] of body) {
    const field = Object.assign(document.createElement("input"), { type: "hidden", name, value });
    carried.append(field);
  }
}

window.addEventListener("beforeunload", (event) => {
  if (!correcting && [...said.values()].some((facts) => facts.state === "ready")) event.preventDefault();
});

tell();
await open(buttons[0]);
if (!visit.dataset.visit) visit.focus();
