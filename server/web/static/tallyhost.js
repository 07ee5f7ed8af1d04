// Pages work without this. It only adds: how long it still is and what the reader's own clock
// says, the check of a list while it is changed, and pages that bring themselves up to date.

const language = document.documentElement.lang;
const relative = new Intl.RelativeTimeFormat(language, { numeric: "auto" });
const clock = new Intl.DateTimeFormat(language, { dateStyle: "medium", timeStyle: "short" });

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
    const hour = here.match(/\d{1,2}:\d\d/)?.[0];
    const same = hour && time.textContent.includes(hour.padStart(5, "0"));
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

// Pages marked data-live ask again every so many seconds and show what has changed.
const live = document.querySelector("[data-live]");
if (live) {
  setInterval(async () => {
    const answer = await fetch(location.href).catch(() => null);
    if (!answer?.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const fresh = page.querySelector("[data-live]");
    if (fresh && fresh.innerHTML !== live.innerHTML) {
      live.innerHTML = fresh.innerHTML;
      tellTimes();
    }
  }, Number(live.dataset.live) * 1000);
}
