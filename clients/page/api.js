// Calls of the service. What was fetched is kept by the service worker, so that a shop without signal still gets it.

export class Problem extends Error {
  constructor(status, body) {
    super(body.detail || body.title || `HTTP ${status}`);
    this.status = status;
    this.facts = body;
  }
}

async function answer(response) {
  const kind = response.headers.get("content-type") || "";
  const body = kind.includes("json") ? await response.json() : {};
  if (!response.ok) throw new Problem(response.status, body);
  return body;
}

export const get = async (path, query = {}) => {
  const words = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    for (const one of Array.isArray(value) ? value : [value]) if (one !== "" && one != null) words.append(name, one);
  }
  return answer(await fetch(words.size ? `${path}?${words}` : path));
};

export const post = async (path, body) =>
  answer(await fetch(path, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) }));

export const send = async (path, file, field = "photo") => {
  const form = new FormData();
  form.append(field, file);
  return answer(await fetch(path, { method: "POST", body: form }));
};
