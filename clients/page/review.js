// Reviewing: what was suggested, with its evidence, accepted or rejected with a reason. The key stays in this tab.

import { Problem } from "./api.js";
import { el, fill } from "./parts.js";

const $ = (id) => document.getElementById(id);
const say = (text) => { $("state").textContent = text; };
const key = () => ({ authorization: `Bearer ${$("key").value}` });

async function ask(path, options = {}) {
  const response = await fetch(path, { ...options, headers: { ...key(), ...(options.headers || {}) } });
  const kind = response.headers.get("content-type") || "";
  const body = kind.includes("json") ? await response.json() : await response.text();
  if (!response.ok) throw new Problem(response.status, body);
  return body;
}

async function list(after = 0) {
  try {
    const found = await ask(`/v1/suggestions?status=${$("status").value}&after=${after}`);
    const counts = Object.entries(found.counts).map(([name, count]) => `${count} ${name}`).join(", ");
    say(counts || "Nothing has been suggested yet.");
    fill($("list"), ...found.suggestions.map(one),
      found.next ? el("button", { type: "button", text: "More", on: { click: () => list(found.next) } }) : null);
  } catch (error) {
    fill($("list"));
    say(error instanceof Problem ? error.message : "The service cannot be reached.");
  }
}

function one(given) {
  const reason = el("input", { type: "text", "aria-label": `Reason for ${given.text}`, required: "" });
  const decide = (verdict) => async () => {
    if (!reason.value.trim()) { reason.focus(); say("Give a reason first."); return; }
    try {
      await ask(`/v1/suggestions/${given.id}/decisions`, {
        method: "POST", headers: { "content-type": "application/json" },
        body: JSON.stringify({ verdict, reason: reason.value.trim() }),
      });
      say(`${given.text}: ${verdict}.`);
      list();
    } catch (error) { say(error.message); }
  };
  return el("article", {},
    el("h2", { text: given.text, lang: given.lang || "en" }),
    el("p", { cls: "soft", text: [given.kind, given.lang, given.script, given.row_kind, given.ref, given.use].filter(Boolean).join(" · ") }),
    given.note && el("p", { text: given.note }),
    given.evidence && el("p", { text: `Seen: ${given.evidence}` }),
    given.times > 1 && el("p", { text: `Suggested ${given.times} times.` }),
    given.status === "open" && el("div", {}, el("label", {}, "Reason", reason),
      el("div", { cls: "row" },
        el("button", { type: "button", cls: "main", text: "Accept", on: { click: decide("accepted") } }),
        el("button", { type: "button", text: "Reject", on: { click: decide("rejected") } }))));
}

$("form-key").addEventListener("submit", (event) => { event.preventDefault(); list(); });
$("diff").addEventListener("click", async () => {
  try { fill($("list"), el("pre", { text: (await ask("/v1/suggestions.diff")) || "Nothing accepted is waiting." })); say(""); } catch (error) { say(error.message); }
});
