// Words of the page in the reader's language, from the service's catalogues; English where one is missing.

import { get } from "./api.js";

let said = {};
export const RTL = new Set(["ur", "ar", "fa", "he", "ps", "sd"]);
export const tongue = () => localStorage.getItem("tongue") || navigator.languages.map((one) => one.split("-")[0])[0] || "en";

export const say = (key, otherwise = key, facts = {}) =>
  (said[key] || otherwise).replace(/\{(\w+)\}/g, (all, name) => (name in facts ? facts[name] : all));

export const speak = async (tag) => {
  try {
    said = (await get(`/page/say/${tag}.json`)).words;
  } catch {
    said = {};
  }
  document.documentElement.lang = tag;
  document.documentElement.dir = RTL.has(tag) ? "rtl" : "ltr";
  for (const node of document.querySelectorAll("[data-say]")) {
    node.dataset.english ??= node.textContent;
    node.textContent = say(node.dataset.say, node.dataset.english);
  }
  for (const node of document.querySelectorAll("[data-say-label]")) {
    node.dataset.english ??= node.getAttribute("aria-label");
    node.setAttribute("aria-label", say(node.dataset.sayLabel, node.dataset.english));
  }
  document.title = say("ask_bag", "What is in this bag?");
};

// A language by its own name and by the reader's: both are looked for in a shop.
export const tongueName = (tag) => {
  try {
    const own = new Intl.DisplayNames([tag], { type: "language" }).of(tag);
    const here = new Intl.DisplayNames([document.documentElement.lang], { type: "language" }).of(tag);
    return own === here ? own : `${own} (${here})`;
  } catch {
    return tag;
  }
};
