"use strict";
// The page keeps three things: the values typed, the drawing it shows and the
// place on the sheet. Everything else is fetched again whenever the file is
// saved or a value changes.
const at = (id) => document.getElementById(id);
const typed = new Map(); // parameter -> value, only where it differs from the file
let shown = { key: "", sheets: [], kind: "", id: "", number: 0 };
let view = null; // [x, y, w, h] in the sheet's own units, or null for the whole
let whole = [0, 0, 1, 1];
const stopped = "the program has stopped; start it again to go on";
let turn = 0; // the latest request; older answers are dropped

function query() {
  const q = new URLSearchParams();
  for (const [name, value] of typed) q.append("set", name + "=" + value);
  return q.toString();
}

async function redraw() {
  const mine = ++turn;
  at("status").textContent = "drawing …";
  let state;
  try {
    const r = await fetch("state?" + query());
    if (!r.ok) throw new Error(await r.text());
    state = await r.json();
  } catch (e) {
    if (mine === turn) at("status").textContent = "the description cannot be read: " + e.message;
    return;
  }
  if (mine !== turn) return;
  messages(state);
  fields(state.parameters);
  document.title = at("title").textContent = state.title || "Frame";
  if (!state.show) {
    at("status").textContent = "nothing to draw yet";
    return;
  }
  if (state.show !== shown.key) {
    let sheets;
    try {
      const r = await fetch("sheets/" + state.show);
      if (!r.ok) throw new Error(await r.text());
      sheets = await r.json();
    } catch (e) {
      if (mine === turn) at("status").textContent = "cannot draw: " + e.message;
      return;
    }
    if (mine !== turn) return;
    shown.key = state.show;
    shown.sheets = sheets;
    choose(sheets);
    messages(state); // now their buttons know the sheets
    files();
    await open(kept(sheets), true);
  }
  at("status").textContent = told(state.faults);
}

function told(faults) {
  if (faults.length === 0) return "up to date";
  const what = faults.some((f) => f.line) ? "the file cannot be used" : "a value cannot be used";
  return what + "; this is the last drawing that could be made";
}

// kept finds the sheet that was shown before in a new drawing.
function kept(sheets) {
  return sheets.find((s) => s.kind === shown.kind && s.id === shown.id) || sheets.find((s) => s.kind === "frame") || sheets[0];
}

function element(tag, text, kind) {
  const e = document.createElement(tag);
  if (text !== undefined) e.textContent = text;
  if (kind) e.className = kind;
  return e;
}

function messages(state) {
  at("faults").replaceChildren(...state.faults.map((f) => message(f, "cannot be used")));
  at("findings").replaceChildren(...state.findings.map((f, i) => message(f, (i + 1) + ". " + word(f.severity))));
  for (const pre of document.querySelectorAll("pre")) { // bring the mark into sight
    pre.scrollLeft = pre.scrollWidth * (pre.dataset.column / pre.textContent.indexOf("\n")) - pre.clientWidth / 2;
  }
  at("count").textContent = state.findings.length ? "Findings" : "No findings";
}

function word(severity) {
  return { stop: "stop: do not cut", warn: "warning", note: "note" }[severity] || severity;
}

function message(f, head) {
  const box = element(f.severity === "fault" ? "div" : "li", undefined, "message " + f.severity);
  box.append(element("strong", head + (f.line ? ", line " + f.line : "")));
  if (f.snippet) {
    const pre = element("pre", f.snippet + "\n" + " ".repeat(Math.max(0, f.column - 1)) + "^");
    pre.dataset.column = f.column;
    box.append(pre);
  }
  box.append(element("p", f.text));
  if (f.mend) box.append(element("p", "Mend: " + f.mend));
  for (const id of f.about.slice(0, 6)) {
    const sheet = shown.sheets.find((s) => s.id === id || s.id.endsWith("-" + id));
    if (!sheet) continue;
    const b = element("button", id);
    b.addEventListener("click", () => open(sheet, true));
    box.append(b);
  }
  return box;
}

function fields(parameters) {
  at("values").hidden = parameters.length === 0;
  const have = [...at("fields").querySelectorAll("input")].map((i) => i.name);
  if (have.join("\n") !== parameters.map((p) => p.name).join("\n")) {
    at("fields").replaceChildren(...parameters.map(field));
  }
  for (const p of parameters) {
    const input = at("fields").querySelector(`input[name="${CSS.escape(p.name)}"]`);
    if (!typed.has(p.name) && document.activeElement !== input) input.value = p.source;
    input.title = p.value;
    input.classList.toggle("changed", typed.has(p.name));
  }
}

function field(p) {
  const label = element("label", p.name);
  const input = element("input");
  input.name = p.name;
  input.value = typed.get(p.name) || p.source;
  input.addEventListener("change", () => {
    const value = input.value.trim();
    if (value === "") typed.delete(p.name);
    else typed.set(p.name, value);
    redraw();
  });
  label.append(input);
  return label;
}

function choose(sheets) {
  const groups = new Map();
  for (const s of sheets) {
    if (!groups.has(s.group)) groups.set(s.group, element("optgroup"));
    groups.get(s.group).label = s.group;
    const o = element("option", s.number + ". " + s.title);
    o.value = s.number;
    groups.get(s.group).append(o);
  }
  at("sheets").replaceChildren(...groups.values());
}

function files() {
  const base = "of/" + shown.key + "/";
  const links = [["all sheets (PDF)", "packet.pdf"], ["templates (PDF)", "templates.pdf"]].map(([text, name]) => {
    const a = element("a", text);
    a.href = base + name + "?download";
    return a;
  });
  const one = element("a", "this sheet (SVG)");
  one.id = "one";
  at("files").replaceChildren(one, " ", links[0], " ", links[1]);
}

async function open(sheet, fit) {
  if (!sheet) return;
  const key = shown.key;
  let text;
  try {
    const r = await fetch("of/" + key + "/" + sheet.svg);
    if (r.status === 404 && key === shown.key) { // other pages have had newer drawings made since
      shown.key = "";
      redraw();
      return;
    }
    text = await r.text();
    if (!r.ok || key !== shown.key) return;
  } catch {
    at("status").textContent = stopped;
    return;
  }
  const doc = new DOMParser().parseFromString(text, "image/svg+xml");
  const same = sheet.kind === shown.kind && sheet.id === shown.id;
  shown.kind = sheet.kind;
  shown.id = sheet.id;
  shown.number = sheet.number;
  const svg = document.importNode(doc.documentElement, true);
  whole = svg.getAttribute("viewBox").split(/[ ,]+/).map(Number);
  if (fit && !same) view = null;
  svg.removeAttribute("width");
  svg.removeAttribute("height");
  at("paper").replaceChildren(svg);
  at("paper").setAttribute("aria-label", sheet.title + ". Arrow keys move it, plus and minus bring it closer and farther, 0 shows the whole.");
  at("sheets").value = sheet.number;
  at("one").href = "of/" + shown.key + "/" + sheet.svg + "?download";
  look();
}

function look() {
  const svg = at("paper").querySelector("svg");
  if (svg) svg.setAttribute("viewBox", (view || whole).join(" "));
}

// zoom keeps the point at the share fx, fy of the picture where it is.
function zoom(by, fx = 0.5, fy = 0.5) {
  const [x, y, w, h] = view || whole;
  const nw = Math.min(whole[2] * 2, Math.max(whole[2] / 60, w * by));
  const nh = nw * (h / w);
  view = [x + (w - nw) * fx, y + (h - nh) * fy, nw, nh];
  look();
}

function pan(dx, dy) {
  const [x, y, w, h] = view || whole;
  view = [x + dx * w, y + dy * h, w, h];
  look();
}

function step(by) {
  const i = shown.sheets.findIndex((s) => s.number === shown.number);
  open(shown.sheets[i + by], true);
}

const keys = {
  ArrowLeft: () => pan(-0.1, 0), ArrowRight: () => pan(0.1, 0), ArrowUp: () => pan(0, -0.1), ArrowDown: () => pan(0, 0.1),
  "+": () => zoom(0.8), "=": () => zoom(0.8), "-": () => zoom(1.25), "0": () => { view = null; look(); },
  PageUp: () => step(-1), PageDown: () => step(1),
};

function wire() {
  const paper = at("paper");
  paper.addEventListener("keydown", (e) => {
    if (keys[e.key] && !e.ctrlKey && !e.metaKey && !e.altKey) {
      keys[e.key]();
      e.preventDefault();
    }
  });
  paper.addEventListener("wheel", (e) => {
    const box = paper.getBoundingClientRect();
    zoom(e.deltaY > 0 ? 1.15 : 1 / 1.15, (e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height);
    e.preventDefault();
  }, { passive: false });
  let from = null;
  paper.addEventListener("pointerdown", (e) => { from = [e.clientX, e.clientY, false]; });
  paper.addEventListener("pointermove", (e) => {
    if (!from || !(e.buttons & 1)) return;
    const box = paper.getBoundingClientRect();
    const dx = e.clientX - from[0], dy = e.clientY - from[1];
    if (!from[2] && Math.abs(dx) + Math.abs(dy) < 4) return;
    from = [e.clientX, e.clientY, true];
    // The picture fits the shorter way, so both directions move alike.
    const [, , w, h] = view || whole;
    const scale = Math.max(w / box.width, h / box.height);
    pan((-dx * scale) / w, (-dy * scale) / h);
  });
  // A link on a sheet leads to another sheet of the same drawing.
  paper.addEventListener("click", (e) => {
    const a = e.target.closest("a");
    if (!a) return;
    e.preventDefault();
    const to = a.getAttribute("href") || a.getAttributeNS("http://www.w3.org/1999/xlink", "href") || "";
    const sheet = shown.sheets.find((s) => s.svg.endsWith("/" + to));
    if (sheet && !(from && from[2])) open(sheet, true);
  });
  at("sheets").addEventListener("change", () => open(shown.sheets.find((s) => s.number === Number(at("sheets").value)), true));
  at("before").addEventListener("click", () => step(-1));
  at("after").addEventListener("click", () => step(1));
  at("closer").addEventListener("click", () => zoom(0.8));
  at("farther").addEventListener("click", () => zoom(1.25));
  at("whole").addEventListener("click", () => keys["0"]());
  at("values").addEventListener("submit", (e) => e.preventDefault());
  at("values").addEventListener("reset", (e) => {
    e.preventDefault();
    typed.clear();
    redraw();
  });
  const changes = new EventSource("changes");
  changes.addEventListener("message", redraw);
  changes.addEventListener("error", () => { at("status").textContent = stopped; });
}

wire();
