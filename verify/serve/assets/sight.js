// What is seen: drawings, hinges, reasons, travel and checks.

import { put } from "/drawing.js";
import { element } from "/element.js";

const $ = id => document.getElementById(id);

/** Put a drawing in its box. */
export function draw(id, text) {
  const box = $("box-" + id);
  if (box) underline(put(box, text));
}

let pointed = 0; // the part that is pointed at

function underline(svg) {
  svg.querySelectorAll("[data-part]").forEach(g => g.classList.toggle("looked", Number(g.dataset.part) === pointed));
}

/** How far from a part in a picture one may point and mean it, in pixels: half of a finger. */
const reach = 22;

/** The part in a picture that is pointed at: the nearest, −1 for none. */
function partAt(box, event) {
  let best = -1, least = reach;
  for (const g of box.querySelectorAll("[data-part]")) {
    const b = g.getBoundingClientRect();
    const far = Math.hypot(Math.max(b.left - event.clientX, 0, event.clientX - b.right), Math.max(b.top - event.clientY, 0, event.clientY - b.bottom));
    const smaller = far + Math.min(b.width, b.height) / 1000; // what lies on something larger is meant
    if (smaller < least) [best, least] = [Number(g.dataset.part), smaller];
  }
  return best;
}

/** Let parts be pointed at in the pictures; chosen is called with the part. */
export function pointing(chosen) {
  for (const id of ["behind", "above"]) {
    const box = $("box-" + id);
    let dwell = 0, over = -1;
    box.addEventListener("pointermove", event => {
      if (event.pointerType !== "mouse") return;
      const part = partAt(box, event);
      box.classList.toggle("near", part >= 0);
      if (part === over) return;
      over = part;
      clearTimeout(dwell);
      if (part >= 0) dwell = setTimeout(() => chosen(part), 150);
    });
    box.addEventListener("pointerleave", () => { clearTimeout(dwell); over = -1; });
    box.addEventListener("click", event => { const part = partAt(box, event); if (part >= 0) chosen(part); });
  }
}

/** Build a card for every part; chosen is called with the part that is pointed at. */
export function cards(parts, chosen) {
  $("cards").replaceChildren(...byNumber(parts).map(([part, i]) => {
    const button = element("button", { type: "button", class: "name", id: "name-" + i, "aria-pressed": "false" }, part.name);
    const card = element("li", { id: "card-" + i, class: "card" }, element("h3", {}, element("span", { class: "number" }, part.number), button, ),
      element("p", { class: "flag" }),
      element("div", { class: "drawing", id: "box-part-" + i }),
      element("p", { class: "says", id: "says-" + i }), element("p", { class: "told", id: "told-" + i }), element("p", { class: "limit", id: "limit-" + i }));
    let dwell = 0;
    card.addEventListener("pointerenter", () => { dwell = setTimeout(() => chosen(i), 150); });
    card.addEventListener("pointerleave", () => clearTimeout(dwell));
    button.addEventListener("focus", () => chosen(i));
    button.addEventListener("click", () => chosen(i));
    return card;
  }));
}

const byNumber = parts => parts.map((part, i) => [part, i]).sort(([a], [b]) => a.number - b.number);

/** Build a row for every part below the picture. */
export function rows(parts, chosen) {
  $("standing").style.setProperty("--rows", Math.ceil(parts.length / 2));
  $("standing").replaceChildren(...byNumber(parts).map(([part, i]) => {
    const row = element("li", { id: "row-" + i }, element("span", { class: "number" }, part.number), element("span", { class: "way sign", "aria-hidden": "true" }),
      element("strong", { class: "short" }), element("span", { class: "whose" }, part.name), element("span", { class: "marks" }));
    row.addEventListener("click", () => chosen(i));
    return row;
  }));
}

/** Say something else somewhere; what is said already stays untouched. */
function say(where, words) {
  if (where.textContent !== words) where.textContent = words;
}

const symbols = { UP: "▲", DOWN: "▽", LEFT: "◀", RIGHT: "▷", OUT: "◆", IN: "◇" };
let marks = new Map(); // by part: what the checks that fail say of it

function row(i, part) {
  const row = $("row-" + i);
  say(row.querySelector(".way"), symbols[part.way] ?? "");
  say(row.querySelector(".short"), part.short);
  row.classList.toggle("quiet", !part.way && !part.short.startsWith("RUNS"));
  const limited = part.limits?.length > 0, where = row.querySelector(".marks"), m = marks.get(i), card = $("card-" + i);
  where.classList.toggle("limited", limited);
  const told = `${m?.word} ${limited}`;
  if (where.dataset.told !== told) where.replaceChildren(m ? element("span", { class: m.fails ? "bad" : "doubt" }, m.word) : "", limited ? element("span", { class: "limits" }, " ⚠ LIMIT") : "");
  where.dataset.told = told;
  for (const e of [row, card]) {
    e.classList.toggle("fails", !!m?.fails);
    e.classList.toggle("named", !!m && !m.fails);
  }
  const flag = card.querySelector(".flag");
  if (flag.dataset.told !== told) flag.replaceChildren(...(m ? [element("strong", { class: m.fails ? "bad" : "doubt" }, m.word), m.fails ? "" : `. ${m.says}`] : []));
  flag.dataset.told = told;
}

/** Say of everything that is shown from when it is, where it is of a file that can no longer be used. */
export function stamp(since) {
  if (since) document.documentElement.dataset.old = since;
  else delete document.documentElement.dataset.old;
  $("old").textContent = since ? `⚠ OLD PICTURE: as it was at ${since}, before the file broke.` : "";
  $("old").hidden = !since;
  document.querySelectorAll(".stamp").forEach(p => {
    p.hidden = !since;
    p.textContent = since ? `⚠ As it was at ${since}, before the file broke` : "";
  });
}

/** Mark the part that is looked at. */
export function mark(parts, looked) {
  parts.forEach((part, i) => {
    $("card-" + i).classList.toggle("looked", i === looked);
    $("row-" + i).classList.toggle("looked", i === looked);
    $("name-" + i).setAttribute("aria-pressed", i === looked);
  });
  $("why-head").textContent = `Why: ${parts[looked].name}`;
  if ($("part").length !== parts.length || [...$("part")].some((o, i) => o.text !== parts[i].name))
    $("part").replaceChildren(...parts.map((part, i) => element("option", { value: i }, part.name)));
  $("part").value = looked;
  pointed = looked;
  document.querySelectorAll("#box-behind svg, #box-above svg").forEach(underline);
}

/** Show what every part does. */
export function stand(layout, answer) {
  const bites = [];
  $("pointed-part").textContent = layout.parts[answer.part].name;
  $("pointed-says").textContent = answer.parts[answer.part].says;
  answer.parts.forEach((part, i) => {
    say($("says-" + i), part.says);
    say($("told-" + i), part.channels.map(c => `${c.name}: ${c.percent}, ${c.pulse}`).join("; "));
    const limits = (part.limits ?? []).join(", ");
    say($("limit-" + i), limits && `⚠ LIMIT: ${limits}`);
    $("card-" + i).classList.toggle("bitten", !!limits);
    if (limits) bites.push(`${layout.parts[i].name}: ${limits}`);
    row(i, part);
  });
  motors(layout, answer);
  lost(answer.lost);
  const bitten = bites.join("; ");
  if ($("bites").dataset.told !== bitten) $("bites").replaceChildren(element("span", { class: "all" }, bites.length ? `⚠ LIMIT. ${bites.join("; ")}.` : "No travel limit or stop is reached here."),
    element("span", { class: "few", "aria-hidden": "true" }, bites.length ? `⚠ LIMIT at ${bites.length === 1 ? "one part" : bites.length + " parts"}` : "no limit or stop reached"));
  $("bites").dataset.told = bitten;
  $("bites").classList.toggle("bitten", bites.length > 0);
  $("pose").textContent = `The controls: ${answer.pose}.`;
  $("turns").textContent = answer.turns?.length ? `Against everything at rest: ${answer.turns.join(" ")}` : "";
}

// What every motor does, always in one line, so that nothing moves when it begins to run.
function motors(layout, answer) {
  const there = layout.parts.some(p => p.motor), runs = answer.motors?.length > 0;
  $("motors").hidden = !there;
  $("motors").classList.toggle("runs", runs);
  const words = runs ? "⚠ " + answer.motors.join(", ") : "Motor stopped, as computed.";
  say($("motors"), words);
}

// That the signal is lost, at the top and in the pictures.
function lost(words) {
  $("lost").hidden = !words;
  say($("lost"), words && `⚠ ${words}.`);
  document.querySelectorAll(".unheard").forEach(p => { p.hidden = !words; });
  document.documentElement.toggleAttribute("data-lost", !!words);
}

/** Show the cause chain. */
export function why(steps) {
  $("steps").replaceChildren(...(steps ?? []).map(s => {
    const li = element("li", { class: s.limit ? "bitten" : "" }, element("span", { class: "step" }, s.words));
    if (s.limit) li.append(element("p", { class: "limit" }, `⚠ LIMIT: ${s.limit}`));
    if (s.place) li.append(element("p", { class: "place" }, s.place));
    if (s.excerpt) li.append(element("code", { class: "excerpt" }, s.excerpt.trim()));
    return li;
  }));
}

/** Show the travel of a part against a control. */
export function travel(curve) {
  draw("curve", curve.svg);
  $("dead").textContent = curve.dead.join(" ");
  $("curve-caption").textContent = curve.caption;
  const table = $("rows").closest("table");
  table.tHead.replaceChildren(element("tr", {}, ...curve.heads.map(h => element("th", { scope: "col" }, h))));
  $("rows").replaceChildren(...curve.rows.map(([head, ...cells]) =>
    element("tr", {}, element("th", { scope: "row" }, head), ...cells.map(c => element("td", {}, c)))));
}

/** Show that there is no travel. */
export function noTravel() {
  $("box-curve").replaceChildren();
  $("dead").textContent = "No stick, lever or trim bears on it.";
  $("curve-caption").textContent = "";
  $("rows").closest("table").tHead.replaceChildren();
  $("rows").replaceChildren();
}

/** Mark in the curve where the part stands. */
export function here(at) {
  const svg = document.querySelector("#box-curve svg");
  if (!svg || !at) return;
  let mark = svg.querySelector(".here");
  if (!mark) {
    mark = document.createElementNS("http://www.w3.org/2000/svg", "g");
    mark.setAttribute("class", "here");
    mark.innerHTML = '<path/><circle r="1.5"/>';
    svg.append(mark);
  }
  mark.firstChild.setAttribute("d", `M${at.X} 4V52`);
  mark.lastChild.setAttribute("cx", at.X);
  mark.lastChild.setAttribute("cy", at.Y);
}

/** Say of the verdict that it is of before, and that the checks are made again. */
export function checking() {
  $("short").textContent = `checking … Before: ${$("short").textContent}`;
  $("verdict").prepend("checking … Before: ");
  $("since").textContent = "A file changed: checking …";
}

let shownStages = "";

/** Show what the script says. */
export function checks(c) {
  $("verdict").className = "verdict " + c.tone;
  const sign = { good: "✓", heed: "⚠", bad: "✗" }[c.tone];
  $("verdict").replaceChildren(element("span", { class: "sign", "aria-hidden": "true" }, sign), " ", element("strong", {}, c.word), c.text);
  $("short").textContent = `${sign} ${c.short}`;
  $("short").className = c.tone;
  $("first").hidden = !c.first;
  $("first").replaceChildren(element("strong", {}, "✗ First: "), c.first);
  marks = new Map((c.marks ?? []).map(m => [m.part, m]));
  $("since").textContent = `Checked ${c.since}` + (c.changed?.length ? ` after ${c.changed.join(", ")} changed.` : ". It is checked again whenever a file changes.");
  const problem = p => {
    const box = element("div", { class: "problem " + (p.warning ? "heed" : "bad") },
      element("p", {}, element("strong", {}, p.warning ? "⚠ Warning: " : "✗ Mistake: "), p.message), element("p", { class: "place" }, p.place));
    if (p.excerpt) box.append(element("code", { class: "excerpt" }, p.excerpt.trim()));
    if (p.hint) box.append(element("p", { class: "note" }, p.hint));
    return box;
  };
  $("problems").replaceChildren(...(c.problems ?? []).filter(p => !p.warning).map(problem));
  $("warnings").replaceChildren(...(c.problems ?? []).filter(p => p.warning).map(problem));
  const stages = JSON.stringify(c.stages);
  if (stages === shownStages) return;
  shownStages = stages;
  const focused = document.activeElement?.id;
  const open = new Set([...$("stages").querySelectorAll("details[open]")].map(d => d.dataset.stage));
  $("stages").replaceChildren(...(c.stages ?? []).map((stage, k) => {
    const failed = stage.list.filter(check => !check.passed).length;
    const told = failed ? `✗ ${failed} of ${stage.list.length} failed` : `✓ all ${stage.list.length} pass`;
    return element("details", { "data-stage": stage.name, class: failed ? "bad" : "good", open: failed > 0 || open.has(stage.name) },
      element("summary", { id: "stage-" + k }, `${stage.name}: ${told}`), element("ul", {}, ...stage.list.map(check)));
  }));
  if (focused?.startsWith("stage-")) $(focused)?.focus();
}

function check(c) {
  const li = element("li", { class: c.passed ? "pass" : "fail" },
    element("p", { class: "ask" }, element("span", { class: c.passed ? "good" : "bad" }, c.passed ? "✓ pass" : "✗ FAIL"), " ",
      !c.passed && c.of && element("strong", {}, c.of + ": "), c.sentence));
  if (!c.passed && c.miss) li.append(element("p", {}, c.miss));
  if (!c.passed && c.wanted) li.append(element("p", {}, `wanted: ${c.wanted}`));
  li.append(element("p", {}, `${c.passed ? "computed" : "got"}: ${c.got}`), element("p", { class: "place" }, c.pose ? `${c.pose}. ${c.place}` : c.place));
  return li;
}
