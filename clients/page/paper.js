// Sheets from the page: a chart of names, or a menu written a dish to a line; both are typeset by the service.

import { el, fill } from "./parts.js";
import { say, tongue, tongueName } from "./say.js";

const KINDS = ["species", "form", "shop", "look-alikes", "cooking", "drawings"];
const LAWS = ["eu", "us", "india", "codex"];

// A line that ends with a colon opens a section; a dish is its name, its pulses with commas between, and its price.
export function sections(text, first) {
  const out = [];
  for (const line of text.split("\n").map((one) => one.trim()).filter(Boolean)) {
    if (line.endsWith(":") && !line.includes("|")) { out.push({ name: line.slice(0, -1).trim(), dishes: [] }); continue; }
    if (!out.length) out.push({ name: first, dishes: [] });
    const [name, pulses = "", price = ""] = line.split("|").map((one) => one.trim());
    out.at(-1).dishes.push({ name, pulses: pulses.split(/[,،、،]/).map((one) => one.trim()).filter(Boolean), price });
  }
  return out;
}

// The sheet as a file: a PDF, or a page where the service cannot typeset.
export async function print(path, asked, name, forms = [["application/pdf", "pdf"], ["text/html", "html"]]) {
  let problem = null;
  for (const [accept, ending] of forms) {
    const response = await fetch(path, { method: "POST", headers: { "content-type": "application/json", accept }, body: JSON.stringify(asked) });
    if (response.ok) {
      el("a", { href: URL.createObjectURL(await response.blob()), download: `${name}.${ending}` }).click();
      return;
    }
    problem = await response.json().catch(() => ({}));
    if (response.status < 500) break;
  }
  throw new Error(problem.detail || problem.title || say("no_signal", "No answer: the service cannot be reached, and this was not read before."));
}

const labelled = (text, control) => el("label", {}, text, control);
const choice = (name, values) => el("select", { name }, values.map(([value, text]) => el("option", { value, text })));

function languages(tags, how, empty) {
  const offered = tags.map((tag) => [tag, tongueName(tag)]);
  return Array.from({ length: how }, (_, at) => {
    const select = choice("language", at ? [["", empty], ...offered] : offered);
    const here = tags.includes(tongue()) ? tongue() : "en";
    select.value = [here, here === "hi" ? "en" : "hi", ""][at] ?? "";
    return labelled(`${say("language", "Language")} ${new Intl.NumberFormat(document.documentElement.lang).format(at + 1)}`, select);
  });
}

const chosen = (form) => [...new Set(new FormData(form).getAll("language"))].filter(Boolean);

function sending(form, work) {
  const told = el("p", { role: "alert" });
  form.append(told);
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const button = form.querySelector("button");
    button.disabled = true;
    fill(told);
    told.className = "";
    try {
      await work();
    } catch (error) {
      told.className = "caution";
      told.textContent = error.message;
    } finally {
      button.disabled = false;
    }
  });
  return form;
}

const controls = (box) => [...box.querySelectorAll("select, input, textarea")];

// Built anew in another language of the page; what was filled in stays.
export function paper(box, tags) {
  if (!tags.length) return;
  const held = controls(box).map((one) => one.type === "checkbox" ? one.checked : one.value);
  const empty = say("no_other", "no other");
  const press = () => el("button", { type: "submit", cls: "main", text: say("print_it", "Make the sheet") });
  const chart = el("form", { id: "form-chart" },
    labelled(say("chart_kind", "Chart"), choice("kind", KINDS.map((kind) => [kind, say(`chart_${kind}`, kind)]))),
    languages(tags, 3, empty), press());
  const menu = el("form", { id: "form-menu" },
    labelled(say("menu_title", "Title"), el("input", { type: "text", name: "title", maxlength: "200", required: true })),
    languages(tags, 3, empty),
    labelled(say("menu_dishes", "One dish to a line: name | its pulses, as labels say them | price. A line that ends with a colon opens a section."),
      el("textarea", { name: "dishes", rows: "6", maxlength: "50000", required: true })),
    labelled(say("menu_law", "Allergens by the law of"), choice("law", LAWS.map((law) => [law, say(`law_${law}`, law)]))),
    el("label", { cls: "tick" }, el("input", { type: "checkbox", name: "staff" }), say("menu_staff", "with a sheet for the staff")),
    press());
  fill(box, el("h2", { text: say("make_chart", "A chart of names") }),
    sending(chart, () => print("/v1/charts", { kind: chart.elements.kind.value, languages: chosen(chart) }, "chart")),
    el("h2", { text: say("make_menu", "A menu") }),
    sending(menu, () => print("/v1/menus", {
      title: menu.elements.title.value, languages: chosen(menu), law: menu.elements.law.value, staff: menu.elements.staff.checked,
      sections: sections(menu.elements.dishes.value, menu.elements.title.value),
    }, "menu")));
  controls(box).forEach((one, at) => {
    if (held.length) one[one.type === "checkbox" ? "checked" : "value"] = held[at];
  });
}
