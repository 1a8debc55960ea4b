// The walk-around with the model in hand, one step at a time.

import { element } from "/element.js";
import { Line } from "/link.js";
import { put } from "/drawing.js";

const $ = id => document.getElementById(id);

let view = null; // what the program says
let at = { screen: "step" }; // where in a step this page is: "step", "which", "what" with a part, "skip"
let sent = -1; // the turn that was answered already
let shown = ""; // what the focus was last put to
let looked = 0; // when the present question may be answered
let fresh = 0; // the timer until then
let late = 0; // the timer until it is said that an answer is still on its way

const line = new Line("/socket/bench/", m => { if (m.kind === "bench") heard(m); }, state => {
  document.documentElement.dataset.line = state;
  $("line").textContent = {
    open: "Connected.",
    lost: "⚠ NOT CONNECTED. Trying again; every answer so far is kept.",
    newer: "⚠ NOT CONNECTED. Another version of Hingeline answers: load this page again.",
  }[state];
  if (state === "open") sent = -1;
  lock();
});

const signs = { good: "✓", heed: "⚠", bad: "✗" };
const answers = new Set(["yes", "no", "all", "seen", "say", "measure", "skip", "finish"]);

/** From now on the question must stand there for a while before it can be answered; the program sees to it too. */
function look() {
  looked = performance.now() + view.look;
  document.documentElement.dataset.fresh = "";
  clearTimeout(fresh);
  fresh = setTimeout(() => { delete document.documentElement.dataset.fresh; }, view.look);
}

/** What came of what was said last. */
function told(text, amiss) {
  $("said").textContent = (amiss ? "⚠ " : "") + text;
  $("said").className = "told-back" + (amiss ? " bad" : "");
}

/** The script's verdict, and the motors in this step. */
function bar() {
  $("short").textContent = `${signs[view.tone]} ${view.short}`;
  $("short").className = view.tone;
  $("motors").hidden = !view.motors;
  $("motors").classList.toggle("runs", view.runs);
  $("motors").textContent = (view.runs ? "⚠ " : "") + view.motors;
}

/** Answer the question that is shown, once. */
function say(what, part = 0, text = "") {
  if (!line.open || sent === view.turn) return;
  if (answers.has(what) && performance.now() < looked) {
    look(); // a burst of taps is no answer, however long it is
    told("Too soon: look first. Nothing was taken.", true);
    scrollTo(0, 0);
    return;
  }
  sent = view.turn;
  line.send({ turn: view.turn, do: what, part, text });
  clearTimeout(late);
  late = setTimeout(() => told("Sent. The line is slow: wait for the next question."), 1000);
  lock();
}

function lock() {
  const busy = !line.open || view && sent === view.turn;
  document.querySelectorAll("#now button").forEach(b => { b.disabled = !!busy; });
}

function heard(m) {
  const moved = !view || view.phase !== m.phase || view.number !== m.number || view.turn !== m.turn;
  view = m;
  clearTimeout(late);
  if (moved) at = { screen: "step" };
  show();
}

function go(next) {
  at = next;
  show();
}

function show() {
  $("model").textContent = `${view.model}: at the bench`;
  told(view.phase === "working" ? "" : view.said, view.amiss);
  bar();
  const [title, ...content] = (view.changed && view.phase !== "over" ? changed : screens[view.phase])();
  $("now").replaceChildren(element("h2", { id: "now-head", tabindex: -1 }, title), ...content.flat().filter(Boolean));
  document.documentElement.dataset.turn = view.turn;
  document.documentElement.dataset.phase = view.phase;
  const key = [view.phase, view.number, at.screen, at.part, view.turn].join();
  if (key !== shown) {
    if (shown) { $("now-head").focus({ preventScroll: true }); scrollTo(0, 0); }
    shown = key;
    look();
  }
  lock();
}

const words = (...text) => element("p", {}, ...text);
/** Lists of what is alike, by what it is alike in. */
function by(list, key) {
  const groups = new Map();
  for (const one of list) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return groups;
}

/** A part as it is called across the bench: by its number, as in the picture. */
const called = p => `${p.number} ${p.name}`;
const part = (p, behind = "") => element("span", { class: "part" }, called(p) + behind);
const listed = parts => parts.flatMap((p, i) => [i ? " " : "", part(p, i < parts.length - 1 ? "," : ".")]);

const capital = text => text[0].toUpperCase() + text.slice(1);
const strong = text => element("strong", {}, text);

function button(label, act, kind = "") {
  const b = element("button", { type: "button", class: "big " + kind }, label);
  b.addEventListener("click", event => { if (event.detail < 2) act(); }); // the second tap of a double tap is nothing
  return b;
}

const row = (...buttons) => element("p", { class: "row" }, ...buttons);

const screens = {
  start: () => ["With the model in hand",
    scriptFails(),
    words("The walk-around, step by step: what to set, what must be seen, and what you saw. Every answer is kept at once, in the record that hingeline bench keeps too."),
    view.unfinished > 0 ? button(`Go on with record ${view.unfinished}`, () => say("resume"), "first") : begin("first"),
    view.unfinished > 0 && element("details", {}, element("summary", {}, `Or begin anew, and leave record ${view.unfinished} unfinished`), begin())],

  working: () => ["One moment", words(view.said)],

  question: () => [view.of ? `Before anything moves: ${view.number} of ${view.of}` : "Before it goes on",
    element("p", { class: "task" }, view.question),
    button("Yes", () => say("yes"), "first"), button("No", () => say("no"), "bad"),
    words("At rest: " + view.rests.join(", ") + "."),
    element("p", { class: "note" }, `The steps: ${view.how}.`), scriptFails()],

  step: () => ({ step, which, what, skip })[at.screen](),

  again: () => [`Step ${view.number} of ${view.of}: seen?`, words("Say it once more, of the model and not of the page:"),
    element("ul", { class: "must" }, ...view.seen.map(one => element("li", {}, strong(one)))),
    button(`Seen: ${view.seen.join(", ")}, yes`, () => say("seen"), "first"), row(button("Back to the step", () => say("back")))],

  last: () => ["That was the last step", view.leave && element("p", { class: "caution" }, view.leave), words("Finish, and the report says what was as expected and what was not."),
    button("Finish", () => say("finish"), "first"), row(button("Back", () => say("back")))],

  over: () => ["The report", view.changed && element("p", { class: "caution" }, "⚠ The airframe file has changed since: this is of the set-up as it was."),
    ...outcome(view.outcome), element("h3", {}, "All of it"), element("pre", { class: "report", tabindex: 0, role: "region", "aria-label": "The report" }, view.report), words(`Kept in ${view.record}.`),
    button("Close", () => say("leave"))],
};

const begin = kind => button("Begin a new walk-around", () => say("begin"), kind);
const scriptFails = () => view.fails && element("p", { class: "verdict bad" }, strong(`✗ ${view.short}.`), ` ${view.fails}`);

/** The verdict in large words, then what differs. */
const outcome = o => [
  element("p", { class: "verdict large " + o.tone }, strong(`${signs[o.tone]} ${o.word}`)), words(o.text),
  o.differs?.length > 0 && element("h3", {}, "What differs"),
  o.differs?.length > 0 && element("ul", { class: "must" }, ...o.differs.map(d => element("li", { class: "bad" }, `✗ ${d}`))),
  o.first && words(o.first)];

const changed = () => ["The set-up has changed",
  words("The airframe file is no longer what this walk is of, so it is not gone on with. Put the file back as it was, or begin a new walk-around."),
  button("Close this walk", () => say("leave"), "first")];

function step() {
  const s = view.step;
  const moving = s.parts.filter(p => p.moves), still = s.parts.filter(p => !p.moves);
  const little = still.filter(p => p.little), fixed = still.filter(p => !p.little);
  const noted = s.parts.filter(p => p.said);
  const progress = element("progress", { max: view.of, value: view.number - 1, "aria-label": "Steps done" });
  const picture = element("div", { class: "drawing bled" });
  put(picture, s.picture);
  return [`Step ${view.number} of ${view.of}`, progress,
    ...(s.beware || []).map((text) => element("p", { class: "caution" }, "⚠ " + text)),
    element("div", { class: "task" },
      s.back && words(strong("First: "), "the transmitter on again, and see that the model hears it."),
      words(strong("Set: "), s.stand?.length ? s.stand.join(", ") + "; everything else at rest." : "everything at rest."),
      s.move?.length ? words(strong("Move: "), element("span", { class: "move" }, s.move.join(", ") + (s.lost ? ": switch the transmitter off" : "")))
        : words(strong("Look "), "at the model as it stands. Move nothing.")),
    picture,
    element("h3", {}, !moving.length ? "Nothing must move" : s.move?.length ? "These must move" : "These must stand off neutral"),
    moving.length > 0 && element("ul", { class: "must" }, ...moving.map(p => element("li", { class: p.differs ? "bad" : "" }, part(p), " ", strong(p.must)))),
    little.length > 0 && element("ul", { class: "must little" }, ...little.map(p => element("li", {}, part(p), " ", element("span", {}, p.must)))),
    ...[...by(fixed, p => p.must)].map(([must, parts]) => words(strong(capital(must) + ": "), ...listed(parts))),
    noted.length > 0 && element("ul", { class: "noted", "aria-label": "Noted" }, ...noted.map(p => element("li", { class: p.differs ? "bad" : "" }, `${p.differs ? "✗" : "✓"} `, part(p, ":"), ` ${p.said.join("; ")}`))),
    button(s.touched ? "The rest is as expected" : "All as expected", () => say("all"), "first"),
    moving.length > 0 && button("Not as expected …", () => go(moving.length === 1 ? { screen: "what", part: moving[0].number } : { screen: "which", moves: true })),
    still.length > 0 && button(moving.length ? "Something else moved as well …" : "Something moved …", () => go(still.length === 1 ? { screen: "what", part: still[0].number } : { screen: "which", moves: false })),
    row(button(s.touched ? "Forget these answers" : "Back", () => say("back")), button("Skip …", () => go({ screen: "skip" })), button("Pause", () => say("pause")))];
}

const toStep = () => row(button("Back to the step", () => go({ screen: "step" })));

const which = () => [at.moves ? "Which was not as expected?" : "Which moved as well?",
  ...view.step.parts.filter(p => p.moves === at.moves).map(p => button(part(p), () => go({ screen: "what", part: p.number }))), toStep()];

function what() {
  const p = view.step.parts.find(one => one.number === at.part);
  return [called(p), words("It should: ", strong(p.must)), ...(p.mayBe ?? []).map(saw => button(capital(saw), () => say("say", p.number, saw))), measure(p), toStep()];
}

function measure(p) {
  const size = element("input", { id: "size", inputmode: "decimal", autocomplete: "off", size: 6, maxlength: 8, required: true });
  const unit = p.ways ? element("select", { "aria-label": "Unit" }, ...(p.mm ? ["degrees", "mm"] : ["degrees"]).map(u => element("option", {}, u))) : null;
  const way = p.ways ? element("select", { "aria-label": "Which way" }, ...p.ways.map(w => element("option", {}, w))) : null;
  const before = view.step.move?.length ? element("input", { type: "checkbox", id: "before" }) : null;
  const form = element("form", { class: "measure" }, element("h3", {}, "Or measured"),
    element("p", { class: "row" }, element("label", { for: "size" }, p.ways ? "It stands" : "Percent"), size, unit ?? "", way ?? ""),
    before ? element("p", { class: "row" }, before, element("label", { for: "before" }, "before the movement")) : "",
    element("button", { class: "big" }, "Note the measurement"));
  form.addEventListener("submit", event => {
    event.preventDefault();
    const none = Number(size.value.replace(",", ".")) === 0;
    say("measure", p.number, [before?.checked ? "before" : "", size.value, unit?.value ?? "%", none ? "" : way?.value ?? ""].filter(Boolean).join(" "));
  });
  return form;
}

function skip() {
  const reason = element("input", { id: "reason", autocomplete: "off", maxlength: 200, required: true });
  const form = element("form", {}, element("p", {}, element("label", { for: "reason" }, "Why is it skipped?")), reason, element("button", { class: "big first" }, "Skip this step"));
  form.addEventListener("submit", event => { event.preventDefault(); say("skip", 0, reason.value); });
  return [`Skip step ${view.number}`, form, toStep()];
}
