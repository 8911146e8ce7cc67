// The page: read, describe grains, browse, and a kitchen remembered on this device.

import { get, post, Problem, send } from "./api.js";
import { paper, print } from "./paper.js";
import { drawing, el, fill, marked, trueSize, words } from "./parts.js";
import { say, speak, tongue, tongueName } from "./say.js";

const $ = (id) => document.getElementById(id);
const VIEWS = ["read", "grains", "browse", "paper", "kitchen"];
const KITCHEN = { vessel: "pressure", gauge_kpa: 80, setting: "high", altitude_m: 0, soak: "overnight", texture: "tender", dish: "usual",
  age: "unknown", dry_g: 200, pot_l: null };
const NUMBERS = ["gauge_kpa", "altitude_m", "dry_g", "pot_l"];
const kitchen = () => ({ ...KITCHEN, ...JSON.parse(localStorage.getItem("kitchen") || "{}") });
// As the service asks for it: what is left open is not sent.
const asked = () => {
  const { dish, setting, ...rest } = kitchen();
  const sent = { ...rest, dish: dish === "usual" ? "" : dish, setting: ["electric", "slow"].includes(rest.vessel) ? setting : "" };
  return Object.fromEntries(Object.entries(sent).filter(([, value]) => value !== null));
};
const state = (text) => { $("state").textContent = text; };

function show() {
  const [wanted, key] = location.hash.slice(1).split("=");
  if (wanted === "read" && key) opened(decodeURIComponent(key));
  const view = VIEWS.includes(wanted) ? wanted : "read";
  for (const one of VIEWS) $(`view-${one}`).hidden = one !== view;
  for (const link of document.querySelectorAll("nav a")) {
    if (link.hash === `#${view}`) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  if (view === "browse") browse();
  if (view === "grains") grains({});
  if (view === "paper") paper($("paper-forms"), tongues);
}

// A printed card's code leads here: the pulse itself, without a label.
async function opened(key) {
  const [species, market_class = "", form = "", colour = ""] = key.split("/");
  try {
    const known = await get(`/v1/pulses/${encodeURIComponent(species)}`);
    const one = { key, species: known.latin, english: known.english, market_class, form, colour };
    fill($("answer"), el("article", {}, inTongue(el("h2", { text: titled(one) }), one), el("p", { cls: "soft", lang: "la", text: one.species }),
      el("div", { cls: "grains" }, drawing(key, titled(one))), next(one)));
  } catch (error) {
    fill($("answer"), failed(error));
  }
}

const failed = (error) => el("p", { cls: "caution", role: "alert",
  text: error instanceof Problem ? error.message : say("no_signal", "No answer: the service cannot be reached, and this was not read before.") });

async function read(text, known = null) {
  const box = $("answer");
  try {
    const reading = known || (await post("/v1/readings", { text, each: true })).answers[0];
    fill(box, reading.map((one) => answer(text, one)));
    state("");
  } catch (error) {
    fill(box, failed(error));
  }
}

function answer(label, reading) {
  const sure = reading.readings.filter((one) => one.probability >= 0.04).slice(0, 5);
  const parts = [];
  // A poison named on the label is said first; one that merely looks alike matters for loose grains.
  for (const one of reading.look_alikes.filter((note) => note.danger && reading.verdict === "none")) {
    parts.push(el("p", { cls: "caution", role: "alert", text: `${say("danger", "Danger")}: ${one.tell}` }));
  }
  if (reading.verdict === "none") {
    parts.push(el("h2", { text: say("not_pulse", "This does not read as a dried pulse.") }));
  } else if (reading.verdict === "one") {
    const one = sure[0];
    parts.push(inTongue(el("h2", { text: titled(one) }), one), el("p", { cls: "soft", lang: "la", text: one.species }),
      el("div", { cls: "grains" }, drawing(one.key, titled(one))), meter(one), next(one));
  } else {
    parts.push(el("h2", { text: say("may_be", "It may be one of these") }));
    parts.push(el("ul", { cls: "plain" }, sure.map((one) => el("li", {}, inTongue(el("strong", { text: titled(one) }), one), meter(one)))));
    if (reading.question) parts.push(ask(reading.question, sure));
  }
  parts.push(el("details", {}, el("summary", { text: say("why", "Why") }),
    el("p", { cls: "label-read" }, marked(label, reading.used)),
    el("ul", { cls: "plain" }, reading.used.filter((one) => one.kind !== "noise").map((one) =>
      el("li", { text: `${one.text}: ${one.ref} (${one.language || "la"})` })))));
  const notes = reading.look_alikes.slice(0, 5);
  if (notes.length && reading.verdict !== "none") {
    parts.push(el("details", {}, el("summary", { text: say("not_this", "Not to be taken for") }),
      el("ul", { cls: "plain" }, notes.map((note) => el("li", { text: `${note.key}: ${note.tell}` })))));
  }
  return el("article", {}, parts);
}

// A heading in the reader's language, once its name is here; English until then.
function inTongue(node, one) {
  if (tongue() !== "en") {
    get("/v1/names", { ...parts(one), language: tongue() }).then((found) => {
      const name = (Object.values(found.names)[0] || [])[0];
      if (name) node.textContent = name.text;
    }).catch(() => {});
  }
  return node;
}

const titled = (one) => [one.english, one.market_class, say(`form_${one.form}`, one.form), say(`colour_${one.colour}`, one.colour)]
  .filter(Boolean).join(", ");

const meter = (one) => el("p", { cls: "sure" },
  el("meter", { min: 0, max: 1, value: one.probability, "aria-label": say("how_sure", "how sure") }),
  el("span", { text: new Intl.NumberFormat(document.documentElement.lang, { style: "percent" }).format(Math.floor(one.probability * 100) / 100) }));

function ask(question, sure) {
  const byKey = Object.fromEntries(sure.map((one) => [one.key, one]));
  return el("div", {}, el("h3", { text: say(`ask_${question.id}`, question.text) }),
    el("div", { cls: "choices" }, question.answers.map((one) => el("button", {
      type: "button", text: either(one.text),
      on: { click: () => settle(one.pulses.map((key) => byKey[key]).filter(Boolean)) },
    }))));
}

function settle(left) {
  const total = left.reduce((sum, one) => sum + one.probability, 0);
  const kept = left.map((one) => ({ ...one, probability: one.probability / total }));
  if (kept.length === 1 || kept[0].probability > 0.9) {
    fill($("answer"), el("article", {}, inTongue(el("h2", { text: titled(kept[0]) }), kept[0]), el("div", { cls: "grains" }, drawing(kept[0].key, titled(kept[0]))), next(kept[0])));
  } else {
    fill($("answer"), el("article", {}, el("h2", { text: say("may_be", "It may be one of these") }),
      el("ul", { cls: "plain" }, kept.map((one) => el("li", {}, inTongue(el("button", { type: "button", text: titled(one), on: { click: () => settle([one]) } }), one))))));
  }
}

const next = (one) => el("div", {},
  opening(say("cook_it", "Cook it"), () => cook(one)),
  opening(say("ask_for_it", "Ask for it"), () => askFor(one)),
  opening(say("instead", "Use instead"), () => swaps(one)));

function opening(title, make) {
  const box = el("div", {});
  let done = false;
  return el("details", { on: { toggle: async (event) => {
    if (!event.target.open || done) return;
    done = true;
    try { fill(box, await make()); } catch (error) { done = false; fill(box, failed(error)); }
  } } }, el("summary", { text: title }), box);
}

const parts = (one) => ({ species: one.species, market_class: one.market_class, form: one.form, colour: one.colour });
// Digits as the steps write them.
const inNumbers = (how) => new Intl.NumberFormat(`${document.documentElement.lang}-u-nu-latn`, { maximumFractionDigits: 1, ...how });
const span = (pair, number) => (pair[0] === pair[1] ? number.format(pair[0]) : number.formatRange(pair[0], pair[1]));
const measure = (pair, unit, unitDisplay = "short") => span(pair, inNumbers({ style: "unit", unit, unitDisplay }));
const range = (pair, unit) => `${span(pair, inNumbers())} ${unit}`;

const listing = (lines) => el("dl", {}, lines.flatMap(([name, text]) => [el("dt", { text: name }), el("dd", { text })]));

// What the weight in the kitchen comes to at the table.
function served(found) {
  if (!found) return [];
  const fed = Object.entries(found.portion || {}).filter(([name]) => name !== "kcal" && say(name, ""));
  const feeds = [found.portion && `${inNumbers({ maximumFractionDigits: 0 }).format(found.portion.kcal)} kcal`,
    ...fed.map(([name, grams]) => `${say(name)} ${measure([grams, grams], "gram")}`)].filter(Boolean).join(", ");
  return [
    [say("portions", "Portions"), span(found.portions, inNumbers())],
    [say("cans", "Instead of cans (400 g)"), span(found.cans, inNumbers())],
    feeds && [say("a_portion", "A portion (70 g dry)"), feeds],
  ].filter(Boolean);
}

// The day reckoned backwards from the meal, in the time of this device.
function day(one) {
  const clock = el("input", { type: "time", value: "19:00", required: true });
  const box = el("div", { role: "status" });
  const wanted = () => ({ ...parts(one), ...asked(), language: tongue(), ready: clock.value, zone: Intl.DateTimeFormat().resolvedOptions().timeZone });
  const at = new Intl.DateTimeFormat(`${document.documentElement.lang}-u-nu-latn`, { weekday: "short", hour: "numeric", minute: "2-digit" });
  const form = el("form", { cls: "row" }, el("label", {}, say("on_table", "On the table at"), clock),
    el("button", { type: "submit", text: say("plan_day", "Plan the day") }));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    try {
      const found = await post("/v1/schedules", wanted());
      const save = el("button", { type: "button", text: say("to_calendar", "Into a calendar"), on: { click: () =>
        print("/v1/schedules", wanted(), "day", [["text/calendar", "ics"]]).catch((error) => { state(error.message); }) } });
      fill(box, listing(found.steps.map((step) => [at.format(new Date(step.start)), step.text])), save);
    } catch (error) {
      fill(box, failed(error));
    }
  });
  return el("div", {}, form, box);
}

async function cook(one) {
  const found = await post("/v1/guidance", { ...parts(one), ...asked(), language: tongue() });
  const lines = found.refused ? [] : [
    [say("soak", "Soak"), measure(found.soak_hours, "hour", "long")],
    [say("cook", "Cook"), measure(found.minutes, "minute", "long")],
    found.whistles && [say("whistles", "Whistles"), span(found.whistles, inNumbers())],
    found.fill && found.fill.batches > 1 && [say("batches", "In how many goes"), `${inNumbers().format(found.fill.batches)} × ${measure([found.fill.batch_g, found.fill.batch_g], "gram")}`],
    [say("water", "Water"), `${measure(found.water_ml_per_100g, "milliliter")} / ${measure([100, 100], "gram")} (${range(found.water_cups_per_cup, say("cups_per_cup", "cups per cup"))})`],
    [say("yield", "Cooked"), `${measure(found.cooked_g_per_100g, "gram")} / ${measure([100, 100], "gram")}`],
  ];
  return [
    found.refused && el("p", { cls: "caution", role: "alert", text: found.refused }),
    ...found.cautions.map((note) => el("p", { cls: note.severity === "info" ? "note" : `caution ${note.severity}`, text: note.text })),
    listing([...lines.filter(Boolean), ...served(found.served)]),
    found.served && el("p", { cls: "note", text: found.served.note }),
    el("ol", {}, (found.steps || []).map((step) => el("li", { text: step }))),
    !found.refused && day(one),
    el("p", { cls: "soft", text: `${say("sources", "Sources")}: ${[...new Set([...found.sources, ...(found.served?.sources || [])])].join(", ")}` }),
    el("p", {}, el("a", { href: "#kitchen", text: say("change_kitchen", "Change the kitchen") })),
  ];
}

async function askFor(one) {
  const select = el("select", { "aria-label": say("language", "Language") }, (tongues.length ? tongues : ["hi"]).map((tag) => el("option", { value: tag, text: tongueName(tag) })));
  select.value = localStorage.getItem("ask") || "hi";
  const box = el("div", {});
  const load = async () => {
    localStorage.setItem("ask", select.value);
    const found = await get("/v1/names", { ...parts(one), language: select.value });
    const names = Object.values(found.names)[0] || [];
    for (const name of names) name.key = one.key;
    fill(box, ...(names.length ? card(names) : [el("p", { text: say("no_name", "We have no name in this language.") })]));
  };
  select.addEventListener("change", load);
  await load();
  return [el("label", {}, say("language", "Language"), select), box];
}

// What to show across the counter: the name large, as packs spell it in Latin letters, letter by letter, and others.
function card(names) {
  const first = names[0];
  const latin = names.find((one) => one.script === "Latn" && one.use === "preferred");
  const others = names.filter((one) => one !== first && one !== latin);
  return [
    words(first.text, first.language, first.script, "p", "big"),
    latin && latin !== first && words(latin.text, latin.language, "Latn", "p", ""),
    first.romanised !== first.text && first.romanised !== (latin || {}).text && words(first.romanised, first.language, "Latn", "p", "soft"),
    first.status !== "checked" && el("span", { cls: "draft", text: say("draft", "draft") }),
    sayAloud(first),
    el("button", { type: "button", text: say("print_card", "Card to print"), on: { click: () => printCard(first) } }),
    others.length > 0 && el("details", {}, el("summary", { text: say("other_names", "Other names") }),
      el("ul", { cls: "plain" }, others.slice(0, 8).map((one) => el("li", {}, words(one.text, one.language, one.script))))),
  ].filter(Boolean);
}

async function printCard(name) {
  try {
    await print("/v1/cards", { pulses: [name.key], languages: [name.language], address: location.origin + "/" }, "card");
  } catch (error) {
    state(error.message);
  }
}

function sayAloud(name) {
  if (!("speechSynthesis" in window)) return null;
  const voice = speechSynthesis.getVoices().find((one) => one.lang.startsWith(name.language.split("-")[0]));
  if (!voice) return null;
  return el("button", { type: "button", text: say("say_it", "Say it aloud"), on: { click: () => {
    const line = new SpeechSynthesisUtterance(name.text);
    line.voice = voice;
    line.lang = voice.lang;
    speechSynthesis.speak(line);
  } } });
}

async function swaps(one) {
  const found = await post("/v1/swaps", parts(one));
  return el("ul", { cls: "plain" }, found.swaps.slice(0, 6).map((swap) => el("li", {},
    el("strong", { text: titled(swap) }), el("p", { cls: "soft", text: swap.reasons.join(" ") }),
    ...(swap.warnings || []).map((text) => el("p", { cls: "caution", text })))));
}

async function photo(file) {
  fill($("answer"), el("p", { role: "status", text: say("looking", "Looking at the photo ...") }));
  try {
    const found = await send("/v1/photo-readings", file);
    $("label-text").value = found.text;
    if (found.reading) await read(found.text, [found.reading]);
    else fill($("answer"), el("p", { text: say("no_words", "No words were found in the photo: type them instead.") }));
  } catch (error) {
    fill($("answer"), failed(error));
  }
}

// A trait's value in the reader's words: a colour, a form, a shape or a mark.
const either = (text) => new Intl.ListFormat(document.documentElement.lang, { type: "disjunction" }).format(text.split(" or ").map(valueWord));
const valueWord = (value) => say(`colour_${value}`, "") || say(`form_${value}`, "") || say(`text_${value.replaceAll("-", " ")}`, value.replaceAll("-", " "));

async function grains(traits) {
  const box = $("grain-steps");
  try {
    const found = await post("/v1/grain-readings", traits);
    const rows = found.ranked.slice(0, 5);
    fill(box,
      found.warnings.map((text) => el("p", { cls: "caution", role: "alert", text })),
      found.ask && el("div", {}, el("h2", { text: say(`trait_${found.ask.trait}`, found.ask.text) }),
        el("div", { cls: "choices" }, found.ask.answers.map((value) => el("button", {
          type: "button", text: valueWord(value),
          on: { click: () => grains({ ...traits, [found.ask.trait]: found.ask.trait.endsWith("_mm") ? Number(value) : value }) },
        })))),
      Object.keys(traits).length > 0 && el("button", { type: "button", text: say("again", "Start again"), on: { click: () => grains({}) } }),
      Object.keys(traits).length > 0 && el("ul", { cls: "plain" }, rows.map((one) => el("li", {},
        el("strong", { text: titled(one) }), meter(one), drawing(one.key, titled(one))))),
      found.settled && rows.length && next(rows[0]));
  } catch (error) {
    fill(box, failed(error));
  }
}

let listed = null;
let tongues = [];
async function browse() {
  const box = $("browse-list");
  try {
    listed ||= (await get("/v1/pulses")).pulses.filter((one) => one.standing === "pulse");
    const tag = $("column").value || "hi";
    const wanted = $("browse-find").value.toLowerCase();
    const rows = listed.filter((one) => `${one.english} ${one.latin}`.toLowerCase().includes(wanted));
    fill(box, rows.map((one) => opening(`${one.english} (${one.latin})`, async () => {
      const found = await get("/v1/names", { species: one.id, form: one.forms[0], language: tag });
      const names = Object.values(found.names)[0] || [];
      return [el("div", { cls: "grains" }, drawing(`${one.id}//${one.forms[0]}`, one.english)),
        ...names.filter((name) => name.use === "preferred").map((name) => words(name.text, name.language, name.script, "p", "big")),
        el("p", { cls: "soft", text: one.forms.map((form) => say(`form_${form}`, form)).join(", ") }),
        next({ ...one, species: one.latin, key: one.id, market_class: "", form: one.forms[0], colour: "" })];
    })));
  } catch (error) {
    fill(box, failed(error));
  }
}

// A gauge is asked of a pressure cooker alone, a setting of what has one.
function needed() {
  const form = $("form-kitchen");
  const vessel = form.elements.vessel.value;
  form.elements.gauge_kpa.closest("label").hidden = vessel !== "pressure";
  form.elements.setting.closest("label").hidden = !["electric", "slow"].includes(vessel);
}

function kitchenForm() {
  const now = kitchen();
  const choice = (name, values) => el("label", {}, say(name, name), el("select", { name }, values.map((value) =>
    el("option", { value, text: say(`${name}_${value}`, value), selected: now[name] === value }))));
  const number = (name, text, most) => el("label", {}, say(name, text), el("input", {
    type: "number", name, min: "0", max: String(most), step: "any", value: String(now[name] ?? ""), inputmode: "decimal" }));
  fill($("form-kitchen"),
    choice("vessel", ["open", "simmer", "pressure", "electric", "slow", "oven"]), number("gauge_kpa", "Gauge pressure, kPa", 200),
    choice("setting", ["high", "low"]), number("altitude_m", "Altitude, m", 5500),
    choice("soak", ["none", "hot", "overnight", "fridge", "brine"]), choice("texture", ["firm", "tender", "creamy"]),
    choice("dish", ["usual", "drained", "thick", "soupy"]), choice("age", ["unknown", "new", "year", "old", "badly-stored"]),
    number("dry_g", "Dry weight, g", 5000), number("pot_l", "Size of the pot, litres", 100));
  needed();
  $("form-kitchen").addEventListener("change", () => {
    needed();
    const kept = {};
    for (const [name, value] of new FormData($("form-kitchen"))) kept[name] = NUMBERS.includes(name) ? (value === "" ? null : Number(value)) : value;
    localStorage.setItem("kitchen", JSON.stringify(kept));
    state(say("kept", "Kept."));
  });
}

async function start() {
  await speak(tongue());
  trueSize();
  kitchenForm();
  window.addEventListener("hashchange", show);
  $("form-read").addEventListener("submit", (event) => {
    event.preventDefault();
    const text = $("label-text").value.trim();
    if (text) read(text);
  });
  $("label-text").addEventListener("keydown", (event) => {
    if (event.key === "Enter" && !event.shiftKey) { event.preventDefault(); $("form-read").requestSubmit(); }
  });
  $("label-photo").addEventListener("change", (event) => event.target.files[0] && photo(event.target.files[0]));
  $("card-size").value = localStorage.getItem("card") || "324";
  $("card-size").addEventListener("input", (event) => { localStorage.setItem("card", event.target.value); trueSize(); });
  $("browse-find").addEventListener("input", browse);
  $("column").addEventListener("change", browse);
  $("tongue").addEventListener("change", async (event) => { localStorage.setItem("tongue", event.target.value); await speak(event.target.value); kitchenForm(); show(); });
  try {
    const offered = (await get("/page/say/list.json")).languages;
    fill($("tongue"), offered.map((one) => el("option", { value: one.tag, text: one.name, selected: one.tag === tongue() })));
    tongues = (await get("/v1/languages")).languages.map((one) => one.tag);
    fill($("column"), tongues.map((tag) => el("option", { value: tag, text: tongueName(tag), selected: tag === "hi" })));
  } catch { state(say("offline", "Offline: what was loaded before still works.")); }
  show();
  if ("serviceWorker" in navigator) navigator.serviceWorker.register("/worker.js");
  window.addEventListener("offline", () => state(say("offline", "Offline: what was loaded before still works.")));
}

start();
