// Small helpers that build the page from values; text is always set as text, never as markup.

export const el = (tag, facts = {}, ...inside) => {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(facts)) {
    if (value == null || value === false) continue;
    if (name === "on") for (const [what, how] of Object.entries(value)) node.addEventListener(what, how);
    else if (name === "text") node.textContent = value;
    else if (name in node && name !== "list" && typeof value !== "string") node[name] = value;
    else node.setAttribute(name === "cls" ? "class" : name, value);
  }
  node.append(...inside.flat().filter((one) => one != null && one !== false));
  return node;
};

export const fill = (node, ...inside) => node.replaceChildren(...inside.flat().filter(Boolean));

const RTL = new Set(["Arab", "Hebr"]);
export const words = (text, lang, script, tag = "span", cls = "") =>
  el(tag, { text, lang: script && script !== "Latn" ? lang : `${lang}-Latn`, dir: RTL.has(script) ? "rtl" : "ltr", cls });

// A label with the words it was read by marked; offsets count code points.
export const marked = (label, used) => {
  const letters = Array.from(label);
  const out = [];
  let at = 0;
  for (const one of [...used].filter((u) => u.kind !== "noise").sort((a, b) => a.start - b.start)) {
    if (one.start < at) continue;
    out.push(letters.slice(at, one.start).join(""));
    out.push(el("mark", { text: letters.slice(one.start, one.end).join("") }));
    at = one.end;
  }
  out.push(letters.slice(at).join(""));
  return out;
};

export const drawing = (key, alt) => {
  const [species, market_class = "", form = "", colour = ""] = key.split("/");
  const query = new URLSearchParams({ market_class, form, colour });
  return el("img", { src: `/v1/pulses/${species}/drawing?${query}`, alt, cls: "drawn", loading: "lazy" });
};

export const trueSize = () => {
  const wide = Number(localStorage.getItem("card") || 0);
  if (wide) document.documentElement.style.setProperty("--mm", `${wide / 85.6}px`);
  return wide ? wide / 85.6 / 3.7795 : 1;
};
