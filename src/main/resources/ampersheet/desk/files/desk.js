"use strict";
// Only what a form cannot do by itself: to keep what is typed and not sent while one looks elsewhere, to count what is
// ticked, and to send a problem dragged elsewhere as a move.

/** What was typed or chosen in this window and is not sent yet; it ends with the window. */
const unsent = (() => {
  const NAME = "unsent";
  let lasts = true;
  const read = () => {
    try {
      return JSON.parse(sessionStorage.getItem(NAME) || "{}");
    } catch (refused) {
      lasts = false;
      return all || {};
    }
  };
  let all = null;
  all = read();
  const write = () => {
    try {
      sessionStorage.setItem(NAME, JSON.stringify(all));
    } catch (refused) {
      lasts = false;
    }
  };
  return {
    get: key => all[key],
    reread: () => { all = read(); },
    set: (key, value) => { all[key] = value; write(); },
    remove: key => { delete all[key]; write(); },
    entries: () => Object.entries(all),
    lasts: () => lasts,
  };
})();

const LOOK = "look";
const TICKS = "ticks";
const place = document.body.dataset.place;
/** Several pages belong to one place; each has forms of its own. */
const page = document.body.dataset.page;
const ofPlace = path => document.querySelector(`.places a[href="/${path}"]`);
const called = () => (ofPlace(page) || document.querySelector("h1")).textContent;
/** Forms that change a file of the course say which version of it they saw. */
const keeps = form => Boolean(form.elements.seen);
const forms = () => [...document.querySelectorAll("form[method=post]:not([hidden])")];
/** The desk shows there what was sent and could not be kept. */
const isRefused = form => form.dataset.unkept !== undefined;
/** Rows of a table say of which line they are. */
const fieldsOf = form => [...form.elements].filter(one => one.name === "from"
  || one.name && !one.hidden && !["hidden", "file", "submit", "button", "fieldset"].includes(one.type));
const boxed = field => field.type === "checkbox" || field.type === "radio";
const isOn = field => boxed(field) ? field.checked : field.value;
const wasOn = field => {
  if (field.options) {
    const chosen = [...field.options].find(option => option.defaultSelected) || field.options[0];
    return chosen ? chosen.value : "";
  }
  return boxed(field) ? field.defaultChecked : field.defaultValue;
};
const put = (field, value) => {
  if (boxed(field)) {
    field.checked = value;
  } else {
    field.value = value;
  }
};

/** Of a form among those of all places, and of a field among those of its form. */
function keyOf(form) {
  const about = ["at", "key"].map(name => form.elements[name] ? form.elements[name].value : "").join(" ");
  const alike = forms().filter(other => other.getAttribute("action") === form.getAttribute("action"));
  return [place, form.getAttribute("action"), about.trim() || alike.indexOf(form)].join(" ");
}
function named(form) {
  const seen = {};
  return fieldsOf(form).map(field => {
    const name = field.name + (boxed(field) ? "=" + field.value : "");
    seen[name] = (seen[name] || 0) + 1;
    return [name + " " + seen[name], field];
  });
}

const isChanged = form => isRefused(form) || fieldsOf(form).some(field => isOn(field) !== wasOn(field));

function note(form) {
  const changed = {};
  for (const [name, field] of named(form)) {
    if (isRefused(form) || isOn(field) !== wasOn(field)) {
      changed[name] = [isRefused(form) ? null : wasOn(field), isOn(field)];
    }
  }
  if (Object.keys(changed).length === 0) {
    unsent.remove(keyOf(form));
  } else {
    unsent.set(keyOf(form), { place, page, called: called(), changed, keeps: keeps(form), seen: keeps(form) ? form.elements.seen.value : "" });
  }
}

function told(id) {
  return document.getElementById(id).content.firstElementChild.cloneNode(true);
}

/** Puts back what was typed. Where the course has changed below it, the desk is to show both. */
function restore(form) {
  const noted = unsent.get(keyOf(form));
  if (!noted) {
    return;
  }
  const rows = Object.keys(noted.changed).filter(name => name.startsWith("kind ")).map(name => Number(name.slice(5)));
  while (form.querySelector(".bins") && form.querySelectorAll("[name=kind]").length < Math.max(0, ...rows)) {
    addRow(form);
  }
  let older = false;
  for (const [name, field] of named(form)) {
    if (noted.changed[name]) {
      const [was, is] = noted.changed[name];
      older = older || wasOn(field) !== is && (was === null ? noted.seen !== form.elements.seen.value : wasOn(field) !== was);
      put(field, is);
    }
  }
  if (isRefused(form)) {
    return;
  }
  if (!isChanged(form)) {
    unsent.remove(keyOf(form));
    return;
  }
  if (keeps(form)) {
    if (older) {
      form.elements.seen.value = noted.seen;
    }
    const note = told("unsent-here");
    note.querySelector("button").addEventListener("click", () => {
      unsent.remove(keyOf(form));
      location.reload();
    });
    form.prepend(note);
    for (let at = form.closest("details"); at; at = at.parentElement.closest("details")) {
      at.open = true;
    }
  }
}

/** One more empty line of the table of parts. */
function addRow(form) {
  const row = form.querySelector(".bins tbody").lastElementChild.cloneNode(true);
  for (const field of row.querySelectorAll("input, select")) {
    field.defaultValue = "";
    field.value = "";
    field.removeAttribute("placeholder");
    if (field.ariaLabel) {
      field.ariaLabel = field.ariaLabel.replace(/[0-9]+$/, line => Number(line) + 1);
    }
  }
  form.querySelector(".bins tbody").append(row);
  return row;
}

/** A note that ends with the names of those pages where something waits to be kept; none if there are none. */
function noteOf(id, pages) {
  if (pages.length === 0) {
    return [];
  }
  const note = told(id);
  note.classList.add("elsewhere");
  pages.forEach((one, i) => {
    const link = document.createElement("a");
    link.href = "/" + one.page;
    link.textContent = one.called;
    note.append(i === 0 ? " " : ", ", link);
  });
  return [note];
}

/** Names the other pages where something waits to be kept, above all and beside what would be made without it. */
function tellElsewhere() {
  const order = [...document.querySelectorAll(".places a")];
  const pages = new Map(unsent.entries().map(([key, one]) => one)
    .filter(one => one.keeps && one.page && one.page !== page)
    .sort((one, other) => order.indexOf(ofPlace(one.place)) - order.indexOf(ofPlace(other.place))
      || one.page.localeCompare(other.page, "en", { numeric: true }))
    .map(one => [one.page, one]));
  document.querySelectorAll(".elsewhere").forEach(note => note.remove());
  document.querySelector("h1").after(...noteOf("unsent-elsewhere", [...pages.values()]));
  for (const form of document.querySelectorAll("form[data-from]")) {
    const from = form.dataset.from.split(" ");
    form.querySelector(".buttons").before(...noteOf("unsent-make", [...pages.values()].filter(one => from.includes(one.place))));
  }
}

/** What was told of the last thing done is told of no other. */
function untell() {
  const notices = document.getElementById("notices");
  if (notices) {
    notices.remove();
  }
}

const boxes = () => [...document.querySelectorAll("#choosing input[name=lesson]")];
function countTicked() {
  const ticked = document.getElementById("ticked");
  if (ticked) {
    const count = boxes().filter(box => box.checked).length;
    ticked.textContent = count === 0 ? "what is ticked" : count === 1 ? "the one that is ticked" : "the " + count + " that are ticked";
  }
}
function noteTicks() {
  const shown = boxes().map(box => box.value);
  const others = (unsent.get(TICKS) || { lessons: [] }).lessons.filter(one => !shown.includes(one));
  const lessons = others.concat(boxes().filter(box => box.checked).map(box => box.value));
  if (lessons.length === 0) {
    unsent.remove(TICKS);
  } else {
    unsent.set(TICKS, { lessons });
  }
}
/** What is ticked and does not fit what is looked for is listed all the same, by the desk. */
function restoreTicks() {
  const noted = unsent.get(TICKS);
  if (!document.getElementById("choosing")) {
    return;
  }
  if (noted) {
    const asked = new URL(location.href);
    const known = asked.searchParams.getAll("lesson");
    const missing = noted.lessons.filter(one => !known.includes(one) && !boxes().some(box => box.value === one));
    if (missing.length > 0) {
      missing.forEach(one => asked.searchParams.append("lesson", one));
      location.replace(asked);
      return;
    }
    boxes().forEach(box => { box.checked = noted.lessons.includes(box.value); });
  } else if (boxes().some(box => box.checked)) {
    noteTicks();
  }
  countTicked();
}

/** Which seat's sheet is looked at beside the set or a week stays while its problems change. */
function restoreLook() {
  const form = document.querySelector("form.look");
  const part = document.getElementById("sheet-part");
  const noted = unsent.get(LOOK);
  if (form && part && noted && !new URL(location.href).searchParams.has("seat") && Number(noted.seat) <= Number(form.elements.seat.max)) {
    form.elements.seat.value = noted.seat;
    form.elements.side.value = noted.side;
    part.setAttribute("hx-get", form.getAttribute("action") + "?" + new URLSearchParams(new FormData(form)));
  }
}

for (const [key, one] of unsent.entries()) {
  if (one.sent && document.body.dataset.status === "200") {
    unsent.remove(key);
  } else if (one.sent) {
    unsent.set(key, { ...one, sent: false });
  }
}
restoreTicks();
restoreLook();
forms().forEach(restore);
forms().filter(isRefused).forEach(note);
tellElsewhere();

const hasFiles = form => [...form.elements].some(one => one.type === "file" && one.value);
let leaving = false;
let sending = null;
/** On the way to another page of the desk, unless what was asked for opens elsewhere. */
function leave() {
  leaving = true;
  setTimeout(() => { leaving = false; }, 1000);
}
for (const kind of ["input", "change"]) {
  document.addEventListener(kind, event => {
    const form = event.target.form;
    if (event.target.name === "lesson") {
      noteTicks();
      countTicked();
    } else if (form && form.matches(".look")) {
      unsent.set(LOOK, { seat: form.elements.seat.value, side: form.elements.side.value });
    } else if (form && form.matches("form[method=post]:not([hidden])")) {
      note(form);
    }
  });
}

/** Nothing where the desk answers; else which note tells why not. A desk that was started anew does not know this window. */
const trouble = () => fetch("/files/desk.css", { cache: "no-store", signal: AbortSignal.timeout(PATIENCE) }).then(reply => reply.ok ? "" : "strange", () => "silent");
const PATIENCE = 10000;
let asked = null;
let answered = null;
/** Sent only to a desk that answers: the browser's own page on what it cannot reach would take the place of what was typed. */
document.addEventListener("submit", event => {
  const form = event.target;
  const method = event.submitter && event.submitter.formMethod || form.method;
  if (method !== "post" || answered === form) {
    answered = null;
    return;
  }
  event.preventDefault();
  event.stopImmediatePropagation();
  if (asked === form) {
    return;
  }
  asked = form;
  trouble().then(why => {
    asked = null;
    document.querySelectorAll(".silent").forEach(note => note.remove());
    if (!why) {
      answered = form;
      form.requestSubmit(event.submitter && event.submitter.form === form ? event.submitter : null);
      return;
    }
    const note = told(why);
    (event.submitter && event.submitter.closest(".buttons") || form.lastElementChild).before(note);
    note.scrollIntoView({ block: "nearest" });
  });
}, true);
document.addEventListener("submit", event => {
  const adds = event.submitter && event.submitter.getAttribute("formaction") === "/set/add";
  const key = adds ? TICKS : event.target.method === "post" ? keyOf(event.target) : "";
  if (unsent.get(key)) {
    unsent.set(key, { ...unsent.get(key), sent: true });
  }
  sending = event.target;
  leave();
});
document.addEventListener("click", event => {
  const link = event.target.closest("a[href]");
  if (link) {
    leave();
    if (link.dataset.drops !== undefined) {
      sending = link.closest("form");
      unsent.remove(keyOf(sending));
    }
  }
  if (event.target.matches(".bins ~ .buttons [name=more]")) {
    event.preventDefault();
    const added = [1, 2, 3].map(() => addRow(event.target.form));
    added[0].querySelector("select").focus();
  }
});
/** What was being made is there: the rest of the page is to tell of it, too. Files that are chosen would be lost. */
document.addEventListener("work-ended", () => {
  if (!forms().some(hasFiles) && unsent.lasts()) {
    leave();
    location.reload();
  }
});
window.addEventListener("pageshow", event => {
  leaving = false;
  sending = null;
  const [way] = performance.getEntriesByType("navigation");
  if (event.persisted || way && way.type === "back_forward") {
    untell();
    unsent.reread();
    tellElsewhere();
  }
});
// Within the desk nothing is lost that can be put back; files that were chosen and not sent cannot.
window.addEventListener("beforeunload", event => {
  const others = forms().filter(form => form !== sending);
  const files = others.some(hasFiles);
  const typed = others.some(form => keeps(form) && isChanged(form));
  if (files || typed && !(leaving && unsent.lasts())) {
    event.preventDefault();
  }
});

document.addEventListener("DOMContentLoaded", () => {
  const list = document.getElementById("entries");
  const form = document.getElementById("dropped");
  if (!list || !form) {
    return;
  }
  let dragged = null;
  for (const handle of list.querySelectorAll(".handle")) {
    handle.closest(".entry").draggable = true;
  }
  list.classList.add("drags");
  list.addEventListener("dragstart", event => {
    dragged = event.target.closest(".entry");
    event.dataTransfer.effectAllowed = "move";
    event.dataTransfer.setData("text/plain", "");
    dragged.classList.add("dragged");
  });
  list.addEventListener("dragover", event => {
    const over = event.target.closest(".entry");
    if (dragged && over) {
      event.preventDefault();
      for (const entry of list.children) {
        entry.classList.toggle("over", entry === over && entry !== dragged);
      }
    }
  });
  list.addEventListener("dragend", () => {
    for (const entry of list.children) {
      entry.classList.remove("over", "dragged");
    }
    dragged = null;
  });
  list.addEventListener("drop", event => {
    const over = event.target.closest(".entry");
    if (dragged && over && over !== dragged) {
      event.preventDefault();
      form.elements.at.value = dragged.dataset.at;
      form.elements.to.value = over.dataset.at;
      form.requestSubmit();
    }
  });
});
