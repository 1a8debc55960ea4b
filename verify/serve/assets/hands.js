// The controls: what stands where, and how it is moved. The pose is kept by the names of
// the controls, so that it lives on when the page is loaded again or the file is edited.

import { element } from "/element.js";

const kept = "hingeline-pose";
const groups = [["stick", "Sticks"], ["switch", "Switches"], ["lever", "Levers"], ["trim", "Trims"]];

export class Hands {
  at = [];
  held = null; // where they stood when the signal went
  #controls = [];
  #same = "";
  #show = []; // by control: puts what is seen where the control stands
  #root; #moved;

  constructor(root, moved) {
    this.#root = root;
    this.#moved = moved;
  }

  /** Build the controls of a layout, unless they are those that are there. */
  build(controls) {
    const same = JSON.stringify(controls);
    if (same === this.#same) return;
    const pose = this.#same ? this.#byName() : this.#load();
    this.#same = same;
    this.#controls = controls;
    this.at = controls.map(c => this.#fits(c, pose.at?.[c.name]));
    this.held = pose.held ? controls.map(c => this.#fits(c, pose.held[c.name])) : null;
    this.#show = [];
    const focused = document.activeElement?.id;
    this.#root.replaceChildren(...groups.flatMap(([sort, title]) => {
      const mine = controls.map((c, i) => [c, i]).filter(([c]) => c.sort === sort);
      if (!mine.length) return [];
      return [element("div", { class: "group " + sort, role: "group", "aria-label": title },
        element("h3", {}, title), ...mine.map(([c, i]) => sort === "switch" ? this.#switch(c, i) : this.#slider(c, i)))];
    }), this.#signal());
    this.#show.forEach(show => show());
    if (focused) document.getElementById(focused)?.focus();
  }

  /** Where a control stands, in words. */
  words(i) {
    const c = this.#controls[i];
    const detent = c.detents?.find(d => d.at === this.at[i]);
    return detent ? detent.name : c.says[Math.round(this.at[i] - c.low)];
  }

  rest(sort) {
    this.#controls.forEach((c, i) => { if (!sort || c.sort === sort) this.at[i] = c.rest; });
    if (!sort) this.held = null;
    this.#after();
  }

  move(i, at) {
    this.at[i] = at;
    this.#after(i);
  }

  #after(i) {
    if (i === undefined) this.#show.forEach(show => show());
    else this.#show[i]();
    try { sessionStorage.setItem(kept, JSON.stringify(this.#byName())); } catch { /* it is kept as long as the page is open */ }
    this.#moved();
  }

  #byName() {
    const named = list => Object.fromEntries(this.#controls.map((c, i) => [c.name, list[i]]));
    return { at: named(this.at), held: this.held && named(this.held) };
  }

  #load() {
    try { return JSON.parse(sessionStorage.getItem(kept)) ?? {}; } catch { return {}; }
  }

  #fits(c, at) {
    if (typeof at !== "number" || !(at >= c.low && at <= c.high)) return c.rest;
    return c.sort === "switch" ? Math.round(at) : at;
  }

  #switch(c, i) {
    const choices = c.says.map((words, at) => {
      const input = element("input", { type: "radio", name: "control-" + i, id: `control-${i}-${at}`, value: at });
      input.addEventListener("change", () => this.move(i, at));
      return [input, element("label", { class: "choice", for: input.id }, words)];
    });
    this.#show[i] = () => choices.forEach(([input], at) => { input.checked = this.at[i] === at; });
    return element("fieldset", { class: "switch" }, element("legend", {}, c.name), element("div", { class: "choices" }, ...choices.flat()));
  }

  #slider(c, i) {
    const turn = c.turned ? -1 : 1; // forward is up, as the arrow keys are
    const [low, high] = c.turned ? [-c.high, -c.low] : [c.low, c.high];
    const input = element("input", { type: "range", id: "control-" + i, min: low, max: high, step: 1, "aria-orientation": c.upright && "vertical" });
    if (c.upright) input.addEventListener("keydown", event => this.#key(event, input));
    const words = element("span", { class: "stand" });
    input.addEventListener("input", () => this.move(i, turn * Number(input.value) + 0));
    this.#show[i] = () => {
      input.value = turn * this.at[i];
      words.textContent = this.words(i);
      input.setAttribute("aria-valuetext", words.textContent);
    };
    const ends = c.turned ? [c.highWord, c.lowWord] : [c.lowWord, c.highWord];
    const stops = c.detents?.length
      ? c.detents.map(d => [d.name, d.at])
      : c.sort === "lever" ? [] : [["centre", 0]];
    const buttons = stops.map(([name, at]) => {
      const b = element("button", { type: "button", class: "detent", "aria-label": `${c.name}: ${name}` }, name);
      b.addEventListener("click", () => this.move(i, at));
      return b;
    });
    if (c.upright) { // read from the top
      ends.reverse();
      buttons.reverse();
    }
    const between = element("span", { class: "stops" }, ...buttons);
    const row = c.detents?.length ? [between] : [element("span", {}, ends[0]), between, element("span", {}, ends[1])];
    return element("div", { class: c.upright ? "slider upright" : "slider" },
      element("div", { class: "top" }, element("label", { for: input.id }, c.name), words),
      input, element("div", { class: "ends" }, ...row));
  }

  // Browsers differ in what the arrow keys do to a slider that stands upright.
  #key(event, input) {
    const steps = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    if (!steps || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    input.stepUp(steps);
    input.dispatchEvent(new Event("input"));
  }

  #signal() {
    const make = (lost, words) => {
      const input = element("input", { type: "radio", name: "signal", id: "signal-" + (lost ? "lost" : "there") });
      input.addEventListener("change", () => { this.held = lost ? [...this.at] : null; this.#after(); });
      return [input, element("label", { class: "choice", for: input.id }, words)];
    };
    const there = make(false, "there"), lost = make(true, "lost");
    this.#show.push(() => { there[0].checked = !this.held; lost[0].checked = !!this.held; });
    return element("div", { class: "group" }, element("fieldset", { class: "switch" }, element("legend", {}, "signal"),
      element("div", { class: "choices" }, ...there, ...lost)));
  }
}
