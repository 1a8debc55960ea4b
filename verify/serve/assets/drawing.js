// Drawings: they come from our own program, which escapes names, and the policy lets nothing
// in them run.

const page = document.createElement("template");

/** Put a drawing in its box. The box keeps the height of the highest it has had, so that nothing jumps. */
export function put(box, text) {
  page.innerHTML = text;
  const svg = page.content.firstElementChild;
  svg.removeAttribute("width");
  svg.removeAttribute("height");
  const [, , width, height] = svg.getAttribute("viewBox").split(" ").map(Number);
  const ratio = Math.max(Number(box.dataset.ratio ?? 0), height / width);
  box.dataset.ratio = ratio;
  box.style.aspectRatio = `${width} / ${width * ratio}`;
  box.replaceChildren(svg);
  return svg;
}
