"use strict";
// Only what a form cannot do by itself: to count what is ticked, and to send a problem dragged elsewhere as a move.
document.addEventListener("change", event => {
  const ticked = document.getElementById("ticked");
  if (ticked && event.target.name === "lesson") {
    const count = document.querySelectorAll("input[name=lesson]:checked").length;
    ticked.textContent = count === 0 ? "what is ticked" : count === 1 ? "the one that is ticked" : "the " + count + " that are ticked";
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
