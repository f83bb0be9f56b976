// Rows ticked off and balls weighed are kept on this device until the program has acknowledged them.
(() => {
  const KEPT = "on the needles, not sent yet";
  const EVERY_MS = 5_000;
  const box = document.getElementById("waiting");
  const strip = document.querySelector("[data-strip]");
  if (!box) return;
  const act = `/garments/${encodeURIComponent(box.dataset.garment)}/needles`;
  const onPage = document.querySelector("[data-asked]")?.dataset.asked;
  let sending = false;
  let more = false;
  let without = false; // the last try found no connection
  let asked = null; // what the program said of something that was sent and not kept
  const held = new Set(); // what was asked about on this page: sent again when there is an answer
  let typed = null; // the weighing that was typed on this page, and its form

  const kept = () => JSON.parse(localStorage.getItem(KEPT) ?? "[]");
  const keep = (all) => localStorage.setItem(KEPT, JSON.stringify(all));
  const leave = (id) => keep(kept().filter((one) => one.id !== id));
  const add = (one) => keep([...kept().filter((other) => other.id !== one.id), one]);

  function freshId() {
    const chance = crypto.getRandomValues(new Uint32Array(3));
    return [Date.now(), ...chance].map((one) => one.toString(36)).join("");
  }

  // The strip: rows the program knows of, and ticks it does not know of yet.

  const name = strip && `${strip.dataset.piece} ${strip.dataset.part}`;
  let latest = JSON.parse(box.dataset.rowsOf); // rows done of each piece, as the program told them last

  function waiting(piece) {
    const mine = kept().filter((one) => one.kind === "tick" && one.act === act);
    return mine.flatMap((one) => one.taps).filter((tap) => `${tap.piece} ${tap.part_id}` === piece);
  }

  const afterTaps = (rows, piece, of) =>
    waiting(piece).reduce((sum, tap) => Math.min(Math.max(0, sum + tap.rows), of), rows);

  function showStrip() {
    const of = Number(strip.dataset.of);
    const rows = afterTaps(latest[name] ?? 0, name, of);
    const last = rows + 1 + Number(strip.dataset.ahead);
    let top = null;
    for (const one of strip.querySelectorAll("[data-row]")) {
      const number = Number(one.dataset.row);
      if (number === rows + 1) top = one;
      one.hidden = number <= rows + 1 || number > last;
    }
    document.querySelector("[data-done]").textContent = rows;
    strip.querySelector("[data-all]").hidden = rows < of;
    strip.querySelector("[data-tick]").hidden = rows >= of;
    strip.querySelector("[data-back]").hidden = rows === 0;
    if (top) strip.querySelector("[data-top]").replaceChildren(...top.cloneNode(true).childNodes);
    else if (rows < of && !kept().length) location.reload();
  }

  function counted(count, thing) {
    return count === 1 ? `one ${thing}` : `${count} ${thing}s`;
  }

  function show() {
    const all = kept().filter((one) => one.id !== onPage);
    const ticks = all.filter((one) => one.kind === "tick").length;
    const told = [];
    if (ticks) told.push(counted(ticks, "tick"));
    if (all.length > ticks) told.push(counted(all.length - ticks, "weighing"));
    const about = all.find((one) => one.id === asked?.id);
    const words = about
      ? asked.words
      : without && told.length && `Kept on this device, to be sent: ${told.join(" and ")}.`;
    const line = box.querySelector("[data-waits]");
    if (line.textContent !== (words || "")) line.textContent = words || "";
    box.hidden = !words;
    box.querySelector("[data-look]").hidden = about?.kind !== "weighing" || asked.lost;
    box.querySelector("[data-drop]").hidden = !about;
    if (strip) showStrip();
  }

  // What a form holds becomes an entry of its own; false where the form is better sent as it is.

  function tick(form) {
    const fields = new FormData(form);
    const upTo = fields.get("up_to");
    if (upTo !== null && !/^\s*\d{1,6}\s*$/.test(upTo)) return false;
    const of = Number(strip.dataset.of);
    const taps = fields.getAll("piece").map((piece) => {
      const at = `${piece} ${strip.dataset.part}`;
      const more = Number(fields.get("rows"));
      const rows = upTo === null ? more : Number(upTo) - afterTaps(latest[at] ?? 0, at, of);
      return { id: freshId(), part_id: strip.dataset.part, piece, rows };
    });
    add({ id: freshId(), kind: "tick", act, taps });
    if (upTo !== null) form.querySelector("[name=up_to]").value = "";
    return true;
  }

  function weigh(form) {
    const fields = Object.fromEntries(new FormData(form));
    if (!fields.weight.trim()) return false;
    const now = new Date();
    const two = (number) => String(number).padStart(2, "0");
    fields.day ??= `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    fields.minute ??= String(now.getHours() * 60 + now.getMinutes());
    const rows = fields.rows || String(afterTaps(latest[fields.place] ?? 0, fields.place, Infinity));
    add({ id: fields.id, kind: "weighing", act, fields, rows });
    typed = { id: fields.id, form };
    return true;
  }

  // Sent in the order they were made. What is asked about waits for its answer, the others go on.

  function body(one) {
    const pairs = one.kind === "tick" ? one.taps.flatMap(Object.entries) : Object.entries(one.fields);
    return new URLSearchParams(pairs);
  }

  async function send() {
    more = sending;
    if (sending) return;
    sending = true;
    try {
      for (const one of kept()) {
        if ((one.id === onPage || held.has(one.id)) && one.id !== typed?.id) continue;
        const path = one.kind === "tick" ? "ticks" : "weigh";
        const answer = await fetch(`${one.act}/${path}`, {
          method: "POST",
          body: body(one),
          headers: { accept: "application/json" },
        });
        without = false;
        if (!(await heard(one, answer))) break;
      }
    } catch {
      without = true; // All of it stays kept.
      typed = null;
      placed(kept());
    }
    sending = false;
    show();
    if (more) send();
  }

  /** A weighing that waits is of the row it was typed at, whatever is ticked off since. */
  function placed(all) {
    for (const one of all) if (one.kind === "weighing") one.fields.rows ||= one.rows;
    keep(all);
  }

  async function heard(one, answer) {
    const json = answer.headers.get("content-type")?.startsWith("application/json");
    const told = json ? await answer.json() : {};
    if (json && answer.ok) {
      leave(one.id);
      if (told.rows && one.act === act) latest = told.rows;
      if (typed?.id === one.id) location.assign(told.go);
      return true;
    }
    if (!json && answer.status >= 500) return false;
    held.add(one.id);
    if (!json) {
      const words = "This cannot be sent: the garment is not on the needles, or this device is not paired.";
      asked = { id: one.id, words, lost: true };
      return !answer.redirected;
    }
    asked = { id: one.id, words: told.question };
    if (typed?.id === one.id) {
      leave(one.id);
      typed.form.submit();
    } else {
      placed(kept());
    }
    return true;
  }

  /** The program's own page asks about it, and takes the answer. */
  function look() {
    const one = kept().find((other) => other.id === asked.id);
    const form = document.createElement("form");
    form.method = "post";
    form.action = `${one.act}/weigh`;
    for (const [field, value] of Object.entries(one.fields)) {
      const input = Object.assign(document.createElement("input"), { type: "hidden", name: field, value });
      form.append(input);
    }
    document.body.append(form);
    form.submit();
  }

  document.addEventListener("submit", (event) => {
    const form = event.target;
    const takes = form.matches("[data-tick]") ? tick : form.matches("[data-weigh]") ? weigh : null;
    try {
      if (!takes?.(form)) return;
    } catch {
      return; // Where nothing may be stored, the form is sent as it is.
    }
    event.preventDefault();
    show();
    send();
  });
  box.querySelector("[data-look]").addEventListener("click", look);
  box.querySelector("[data-drop]").addEventListener("click", () => {
    leave(asked.id);
    held.clear();
    show();
    send();
  });
  document.querySelector("[data-leave]")?.addEventListener("click", () => leave(onPage));
  addEventListener("online", send);
  addEventListener("storage", show);
  addEventListener("pageshow", send);
  setInterval(() => kept().length && send(), EVERY_MS);
  show();
})();
