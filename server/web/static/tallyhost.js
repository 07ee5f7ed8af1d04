// Pages work without this. It only adds: how long it still is and what the reader's own clock
// says, the check of a list while it is changed, and pages that bring themselves up to date.

const language = document.documentElement.lang;
const relative = new Intl.RelativeTimeFormat(language, { numeric: "auto" });
const clock = new Intl.DateTimeFormat(language, {
  weekday: "short", day: "numeric", month: "short",
  hour: "2-digit", minute: "2-digit", hourCycle: "h23", timeZoneName: "short",
});

const units = [["day", 86400], ["hour", 3600], ["minute", 60]];

function distance(seconds) {
  const [unit, size] = units.find(([, size]) => Math.abs(seconds) >= size) ?? ["minute", 60];
  return relative.format(Math.trunc(seconds / size), unit);
}

function tellTimes() {
  for (const time of document.querySelectorAll("time[datetime]")) {
    const instant = new Date(time.dateTime);
    time.title = clock.format(instant);
    if (!("countdown" in time.dataset)) continue;
    let note = time.nextElementSibling;
    if (!note?.matches("[data-left]")) {
      note = document.createElement("span");
      note.dataset.left = "";
      note.className = "soft";
      time.after(note);
    }
    const words = distance((instant - Date.now()) / 1000);
    const here = clock.format(instant);
    const same = time.textContent.includes(here.match(/\d\d:\d\d/)?.[0]);
    note.textContent = same ? words : `${words} (${here})`;
  }
}

tellTimes();
setInterval(tellTimes, 30_000);

// A form marked data-check is sent as it stands to that address after each change; the answer
// takes the place of the part of the page that shows the findings.
for (const form of document.querySelectorAll("form[data-check]")) {
  const told = document.getElementById(form.dataset.told);
  let latest = 0;
  form.addEventListener("change", async () => {
    const turn = ++latest;
    const body = new URLSearchParams(new FormData(form));
    const answer = await fetch(form.dataset.check, { method: "POST", body }).catch(() => null);
    if (answer?.ok && turn === latest) told.innerHTML = await answer.text();
  });
}

// A file picked here is read into the text field it belongs to; nothing else is sent.
for (const input of document.querySelectorAll("input[type=file][data-into]")) {
  input.closest("[hidden]")?.removeAttribute("hidden");
  input.addEventListener("change", async () => {
    const [file] = input.files;
    if (file) document.getElementById(input.dataset.into).value = await file.text();
  });
}

// A field marked data-copy gets a button of that name that puts its text on the clipboard.
for (const field of document.querySelectorAll("[data-copy]")) {
  if (!navigator.clipboard) break;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = field.dataset.copy;
  button.addEventListener("click", async () => {
    field.select();
    await navigator.clipboard.writeText(field.value).catch(() => null);
  });
  field.after(button);
}

// The wall shows its parts one after the other, and lets whoever stands before it hold them.
const pager = document.querySelector("[data-slides]");
let at = 0;

function turn(by) {
  const slides = [...document.querySelectorAll("[data-slide]")];
  if (!slides.length) return;
  at = (at + by + slides.length) % slides.length;
  slides.forEach((slide, place) => slide.classList.toggle("away", place !== at));
  document.querySelector("[data-where]").textContent = `${at + 1} / ${slides.length}`;
}

if (pager) {
  const pause = document.querySelector("[data-pause]");
  let turning;
  function hold(held) {
    clearInterval(turning);
    if (!held) turning = setInterval(turn, Number(pager.dataset.slides) * 1000, 1);
    pause.setAttribute("aria-pressed", held);
  }
  pause.addEventListener("click", () => {
    const words = pause.textContent;
    pause.textContent = pause.dataset.pause;
    pause.dataset.pause = words;
    hold(pause.getAttribute("aria-pressed") === "false");
  });
  document.querySelector("[data-next]").addEventListener("click", () => turn(1));
  document.querySelector("[data-steps]").hidden = false;
  hold(false);
  turn(0);
}

// A page marked data-live hears from the server when the season has changed. It then asks for
// itself again and takes over what differs in its marked parts; all else stays as it is.
const page = document.body;
let asking = false;
let asked = false;

function isTyped(field) {
  if (field.matches("select")) {
    const options = [...field.options];
    const preset = options.findLastIndex((option) => option.defaultSelected);
    return field.selectedIndex !== Math.max(preset, 0);
  }
  return field.value !== field.defaultValue || field.checked !== field.defaultChecked;
}

// Whether somebody is at work in a part: it then waits, and a note says so.
function isInUse(part) {
  const fields = [...part.querySelectorAll("input:not([type=hidden]), textarea, select")];
  return fields.some((field) => field === document.activeElement || isTyped(field));
}

// Makes a node like a fresh one and keeps whatever is alike, so that the reader's focus, selection,
// scrolled tables and opened details stay.
function takeAfter(node, fresh) {
  if (node.isEqualNode(fresh)) return;
  if (node.nodeName !== fresh.nodeName) return node.replaceWith(fresh);
  if (node.nodeType !== Node.ELEMENT_NODE) {
    node.data = fresh.data;
    return;
  }
  for (const { name } of [...node.attributes]) {
    if (name !== "open" && !fresh.hasAttribute(name)) node.removeAttribute(name);
  }
  for (const { name, value } of fresh.attributes) {
    if (name !== "open" && node.getAttribute(name) !== value) node.setAttribute(name, value);
  }
  const [here, there] = [[...node.childNodes], [...fresh.childNodes]];
  here.slice(there.length).forEach((rest) => rest.remove());
  there.forEach((child, place) => {
    if (here[place]) takeAfter(here[place], child);
    else node.append(child);
  });
}

function takeOver(fresh) {
  document.querySelectorAll("[data-left]").forEach((note) => note.remove());
  for (const part of document.querySelectorAll("[data-part]")) {
    const other = fresh.querySelector(`[data-part="${part.dataset.part}"]`);
    if (!other) continue;
    const inUse = isInUse(part);
    const note = document.querySelector(`[data-waits="${part.dataset.part}"]`);
    if (note) note.hidden = !inUse;
    if (inUse) {
      part.addEventListener("focusout", askAgain, { once: true });
      continue;
    }
    const held = part.contains(document.activeElement) && document.activeElement.getAttribute("href");
    takeAfter(part, other);
    if (held && document.activeElement.getAttribute("href") !== held) {
      part.querySelector(`[href="${CSS.escape(held)}"]`)?.focus();
    }
  }
  page.dataset.version = fresh.body.dataset.version ?? "";
  tellTimes();
  if (pager) turn(0);
}

async function askAgain() {
  asked = true;
  if (asking) return;
  asking = true;
  while (asked) {
    asked = false;
    const answer = await fetch(location.href).catch(() => null);
    if (answer?.ok) takeOver(new DOMParser().parseFromString(await answer.text(), "text/html"));
  }
  asking = false;
}

function listen() {
  const events = new EventSource(page.dataset.live);
  events.addEventListener("version", (event) => {
    if (JSON.parse(event.data).version > Number(page.dataset.version)) askAgain();
  });
  // A lost connection comes back by itself; a server that answered otherwise is asked later.
  events.addEventListener("error", () => {
    if (events.readyState === EventSource.CLOSED) setTimeout(listen, 10_000);
  });
}

if (page.dataset.live) listen();
// The clock changes pages too: deadlines pass. And a season of the club alone has no open events.
if (page.dataset.beat) setInterval(askAgain, Number(page.dataset.beat) * 1000);
