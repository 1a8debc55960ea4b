// The page: hands on one side, sight on the other, and the line to the program between.

import { Hands } from "/hands.js";
import { Link } from "/link.js";
import * as sight from "/sight.js";

const $ = id => document.getElementById(id);

let layout = null;
let looked = 0; // the part looked at
let against = -1; // the control that its travel is shown against
let sentence = false; // a scenario is wanted, until it is there
let last = null; // the last answer
let old = ""; // when the file was read of which what is shown is, where it can no longer be used
let state = ""; // of the line

const hands = new Hands($("controls"), () => { moving(); link.send(); });
const link = new Link(message, heard, lineChanged, isBehind => document.documentElement.toggleAttribute("data-behind", isBehind));

function message() {
  if (!layout) return null;
  return { revision: layout.revision, at: hands.at, held: hands.held ?? undefined, part: looked, against, sentence };
}

function heard(m) {
  if (m.kind === "layout") laidOut(m);
  if (m.kind === "checks") checked(m);
  if (m.kind === "checking") sight.checking();
  if (m.kind === "door") door(m);
  if (m.kind === "answer" && m.revision === layout?.revision) answered(m);
}

function laidOut(m) {
  const parts = JSON.stringify(m.parts), name = layout?.parts[looked]?.name;
  const pulled = layout?.controls[against]?.name;
  const same = layout && parts === JSON.stringify(layout.parts);
  layout = m;
  $("model").textContent = m.model;
  document.title = `${m.model}: in the hand`;
  $("usual").textContent = m.measured ? "" : " The file does not say how large the wing is, so the pictures show a usual one.";
  $("danger").textContent = m.cautions[0] ?? "";
  $("cautions").replaceChildren(...m.cautions.slice(1).map(c => Object.assign(document.createElement("li"), { textContent: c })));
  hands.build(m.controls);
  against = m.controls.findIndex(c => c.name === pulled);
  if (same) return offer();
  looked = Math.max(0, m.parts.findIndex(p => p.name === name));
  sight.cards(m.parts, look);
  sight.rows(m.parts, look);
  sight.mark(m.parts, looked);
  offer();
}

/** Look at a part: why it stands so, and its travel. */
function look(i) {
  if (i === looked) return;
  looked = i;
  sight.mark(layout.parts, looked);
  offer();
  link.send();
}

/** Offer the controls that bear on the part looked at. */
function offer() {
  const list = layout.parts[looked].against ?? [];
  if (!list.includes(against)) against = list[0] ?? -1;
  $("against").replaceChildren(...list.map(c => {
    const o = document.createElement("option");
    o.value = c;
    o.textContent = layout.controls[c].name;
    o.selected = c === against;
    return o;
  }));
  $("against").disabled = !list.length;
}

function answered(m) {
  for (const [id, text] of Object.entries(m.drawings ?? {})) sight.draw(id, text);
  sight.stand(layout, m);
  if (m.part === looked) sight.why(m.why);
  if (m.curve?.part === looked && m.curve.against === against) sight.travel(m.curve);
  if (m.part === looked && !m.here) sight.noTravel();
  if (m.part === looked) sight.here(m.here);
  if (m.sentence) written(m.sentence);
  last = m;
  document.documentElement.dataset.answered = m.number;
  aloud();
}

// While something moves, what is out of sight is not laid out; once it is quiet all of it is there.
let still = 0;
function moving() {
  document.documentElement.dataset.moving = "";
  clearTimeout(still);
  still = setTimeout(() => { delete document.documentElement.dataset.moving; }, 600);
}

// What changed is said once it is quiet: the part looked at, and limits that bite.
let quiet = 0, said = "";
function aloud() {
  const bites = last.parts.map((p, i) => p.limits?.length ? `${layout.parts[i].name} ${p.limits.join(", ")}` : "").filter(Boolean);
  const words = [...(last.motors ?? []), last.lost].map(m => m && `${m}. `).join("") + `${layout.parts[looked].name}: ${last.parts[looked].says}.` + (bites.length ? ` Limit: ${bites.join("; ")}.` : "");
  said ||= words; // what the page opens with is read with the page
  clearTimeout(quiet);
  quiet = setTimeout(() => {
    if (words !== said) $("aloud").textContent = words;
    said = words;
  }, 800);
}

// Said out loud where others on the network may ask for the page; the code on this machine alone.
function door(m) {
  const strong = Object.assign(document.createElement("strong"), { textContent: "⚠ Devices of this network are let in by a code; the line to them is not encrypted." });
  let words = ` ${m.devices} so far.`;
  if (m.shut) words += " After too many wrong codes no more are let in.";
  else if (m.code) words += ` On the device open ${m.addresses.join(" or ")} and give the code ${m.code}; it is for one device, until ${m.until}.`;
  $("door-said").replaceChildren(strong, m.here ? words : " This is one of them.");
  $("door").hidden = false;
}

let verdict = "";
function checked(m) {
  sight.checks(m);
  old = m.oldSince;
  sight.stamp(old);
  lineSaid();
  const words = m.word + m.text;
  if (verdict && m.changed?.length) $("aloud").textContent = `Checked again. ${words}`;
  verdict = words;
}

function lineChanged(now) {
  state = now;
  document.documentElement.dataset.line = state;
  lineSaid();
}

function lineSaid() {
  $("line").textContent = {
    open: old ? "Connected; what you see is old." : "Connected: what you see is computed as you move.",
    slow: "⚠ NO ANSWER. What you see is old. Asking again; your pose is kept.",
    lost: "⚠ NOT CONNECTED. What you see is old. Trying again; your pose is kept.",
    newer: "⚠ NOT CONNECTED. Another version of Hingeline answers: load this page again.",
  }[state] ?? "Not connected yet.";
}

function written(s) {
  sentence = false;
  $("written").hidden = false;
  $("scenario").value = s.text;
  $("left-out").textContent = s.leftOut?.length ? `Left out, since no sentence could be written that holds: ${s.leftOut.join(", ")}.` : "";
  $("copied").textContent = "";
  $("scenario").focus();
}

sight.pointing(look);
$("part").addEventListener("change", event => look(Number(event.target.value)));
// What is stuck to the top says how high it is, so that nothing that is gone to hides below it.
const heights = new ResizeObserver(() => {
  for (const id of ["bar", "picture"]) document.documentElement.style.setProperty(`--${id}`, `${$(id).offsetHeight}px`);
});
heights.observe($("bar"));
heights.observe($("picture"));

$("centre").addEventListener("click", () => hands.rest("stick"));
$("rest").addEventListener("click", () => hands.rest());
$("against").addEventListener("change", event => { against = Number(event.target.value); link.send(); });
$("write").addEventListener("click", () => { sentence = true; link.send(); });
$("copy").addEventListener("click", async () => {
  try {
    await navigator.clipboard.writeText($("scenario").value);
    $("copied").textContent = "Copied.";
  } catch {
    $("scenario").select();
    $("copied").textContent = "Marked: copy it with the keyboard.";
  }
});
