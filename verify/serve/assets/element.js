// An element, with its attributes and what is in it.

export function element(name, attributes = {}, ...children) {
  const e = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === true) e.setAttribute(key, "");
    else if (value !== false && value != null) e.setAttribute(key, value);
  }
  e.append(...children.filter(child => child !== false && child != null));
  return e;
}
