(() => {
  const {element} = page;
  const {sheet, units, bare} = page.data();
  const store = page.store("ampersheet-homework-" + sheet);
  const places = page.places(element("answers"));
  const fileName = "answers-" + sheet + ".csv";

  /* Which of two saved files is the newer must stand in them: a browser names the second as it likes. Counted is by this browser,
     with the answers that were saved last; another tab may have saved since. */
  const saves = page.store("ampersheet-homework-saves-" + sheet);
  const newBrowser = () => Array.from(crypto.getRandomValues(new Uint8Array(6)), byte => "23456789ABCDEFGH"[byte % 16]).join("");
  let counted = {browser: newBrowser(), save: 0};
  const lastSave = () => counted = saves.read() || counted;
  const isSaved = () => counted.save > 0 && counted.answers === JSON.stringify(answers());

  const countSave = () => {
    lastSave();
    counted = {browser: counted.browser, save: isSaved() ? counted.save : counted.save + 1, answers: JSON.stringify(answers())};
    saves.write(counted);
  };

  /* How an answer is understood; never whether it is right. */
  const readBack = place => {
    const typed = place.typed().trim();
    if (typed === "") {
      return ["none", ""];
    }
    if (place.isChoice) {
      return ["read", "You chose: " + typed + "."];
    }
    const [kind, text, inUnit] = readAnswer(typed, units[place.question]);
    switch (kind) {
      case "value":
        return ["read", "You entered " + text + "."];
      case "number":
        return bare.includes(place.question)
            ? ["read", "You entered " + inUnit + "."]
            : ["form", "You entered " + text + " without a unit. Write the unit behind it."];
      case "ambiguous":
        return ["form", "This can be read as " + text + ". Type it with a point as the decimal marker and nothing between the "
            + "thousands, and write the unit."];
      default:
        return ["form", text];
    }
  };

  const answers = () => Object.fromEntries(
      places.map(place => [place.question, place.typed().trim()]).filter(([, typed]) => typed !== ""));

  const cell = text => /[",\r\n]/.test(text) ? "\"" + text.replace(/"/g, "\"\"") + "\"" : text;

  /* The seat of this page beside the sheet ID, so that an ID from another sheet is seen. */
  const csv = () => {
    const {browser, save} = lastSave();
    const behind = [String(Number(sheet.split("-")[1])), String(isSaved() ? save : save + 1), browser];
    return ["sheet,question,answer,seat,save,browser"].concat(Object.entries(answers())
        .map(([question, typed]) => [sheet, question, typed, ...behind].map(cell).join(","))).join("\r\n") + "\r\n";
  };

  /* What is said anew is announced; what stands already is not. */
  const tell = (id, text) => {
    if (element(id).textContent !== text) {
      element(id).textContent = text;
    }
  };

  const link = (target, text) => {
    const made = document.createElement("a");
    made.href = "#" + target;
    made.textContent = text;
    return made;
  };

  const STATES = {none: "blank", form: "unclear", read: "filled"};
  const stateOf = place => STATES[readBack(place)[0]];

  const counts = some => Object.values(STATES).reverse()
      .map(state => [some.filter(place => stateOf(place) === state).length, state])
      .filter(([count]) => count > 0).map(([count, state]) => count + " " + state).join(", ");

  /* What is blank or unclear, by problems, each with the way to it. */
  const listOpen = () => {
    const rows = problems.map(problem => {
      const open = problem.places.filter(place => stateOf(place) !== "filled");
      const row = document.createElement("li");
      row.append("Problem " + problem.number + ": ");
      open.forEach((place, index) => row.append(index > 0 ? ", " : "", link(place.target, place.question), " " + stateOf(place)));
      return open.length > 0 ? row : null;
    });
    element("open-places").replaceChildren(...rows.filter(row => row !== null));
  };

  const update = () => {
    const count = Object.keys(answers()).length;
    const unclear = places.filter(place => stateOf(place) === "unclear").length;
    element("tally").textContent = count + " of " + places.length + " places filled in" + (unclear > 0 ? ", " + unclear + " unclear." : ".");
    for (const problem of problems.filter(one => one.places.length > 0)) {
      problem.state.textContent = counts(problem.places);
    }
    listOpen();
    tellProgress();
    for (const id of ["save", "share", "copy"]) {
      element(id).disabled = count === 0;
    }
    element("file-text").value = csv();
    store.write(answers());
    element("kept").textContent = store.works
        ? "What you type is kept in this browser, on this device, until you clear it."
        : "This browser keeps nothing for this page: save the answer file before you close it.";
  };

  /* Once saved, what was said of it holds until an answer changes. */
  const tellSaved = (how, done) => tell("kept-said", counted.save === 0 ? ""
      : isSaved() ? (how || "These answers are saved.") + (done || "")
      : "Changed since you saved: save again before you hand in.");

  const tellSaving = how => {
    countSave();
    const open = counts(places.filter(place => stateOf(place) !== "filled"));
    tellSaved(how, open ? " Of its places are " + open + ": see above." : " Every place is filled in.");
    update();
  };

  const show = place => place.say(...readBack(place));

  // ------------------------------------------------------------------------------------------------ one problem at a time

  const problems = Array.from(document.querySelectorAll(".problem"), (section, index) => {
    const own = places.filter(place => section.contains(place.element));
    const item = element("problems").querySelectorAll("li")[index];
    const title = section.querySelector("h2");
    title.tabIndex = -1;
    return {section, title, places: own, link: item.querySelector("a"), state: item.querySelector("span"),
      number: item.querySelector("b").textContent};
  });
  for (const place of places) {
    const field = place.element.querySelector("input[type=text]") || place.element.closest("[id]");
    place.target = field.id;
  }
  const shownStore = page.store("ampersheet-homework-shown-" + sheet);
  let at = 0;

  const tellProgress = () => {
    element("progress").textContent = "Problem " + problems[at].number + " of " + problems.length + " · " + element("tally").textContent;
  };

  const turn = (id, index, word) => {
    const to = problems[index];
    element(id).hidden = !to;
    if (to) {
      element(id).href = to.link.hash;
      element(id).textContent = word + to.link.textContent;
    }
  };

  const turnTo = index => {
    at = index;
    problems.forEach((problem, i) => {
      problem.section.classList.toggle("away", i !== at);
      if (i === at) {
        problem.link.setAttribute("aria-current", "step");
      } else {
        problem.link.removeAttribute("aria-current");
      }
    });
    turn("before", at - 1, "Back: ");
    turn("next", at + 1, "Next: ");
    if (at + 1 === problems.length) {
      element("next").hidden = false;
      element("next").href = "#keeping-title";
      element("next").textContent = "Next: handing in";
    }
    element("skip").href = problems[at].link.hash;
    shownStore.write(problems[at].number);
    tellProgress();
    page.reachable(document.body);
  };

  const began = Math.max(0, problems.findIndex(problem => problem.number === shownStore.read()));

  /* The address says which problem is shown, or which place in it; so the browser's own way back leads back. */
  const follow = () => {
    const target = location.hash ? element(decodeURIComponent(location.hash.slice(1))) : null;
    const index = target ? problems.findIndex(problem => problem.section.contains(target)) : began;
    if (index < 0) {
      target.focus();
      return;
    }
    turnTo(index);
    if (target) {
      const field = target.matches("input") ? target : target.querySelector("input:checked, input") || target;
      field.focus();
      (field === target ? target.closest(".question, .step") || target : target).scrollIntoView();
      if (matchMedia("(max-width: 61.99rem)").matches) {
        element("problems").querySelector("details").open = false;
      }
    }
  };

  window.addEventListener("hashchange", follow);

  // ------------------------------------------------------------------------------------------------ start

  const kept = store.read() || {};
  for (const place of places) {
    place.fill(kept[place.question] || "");
    show(place);
    place.element.addEventListener("input", () => {
      show(place);
      update();
      tellSaved();
    });
    place.element.addEventListener("change", () => {
      const [, text] = readBack(place);
      element("read-back").textContent = text === "" ? "" : place.question + ": " + text;
    });
  }

  element("answers").addEventListener("submit", event => event.preventDefault());
  element("save").addEventListener("click", () => {
    page.saveFile(fileName, "text/csv;charset=utf-8", csv());
    tellSaving("Saved as " + fileName + ". Hand in that file; save again if you change an answer.");
  });

  const file = () => new File([csv()], fileName, {type: "text/csv"});
  element("share").hidden = !(navigator.canShare && navigator.canShare({files: [file()]}));
  element("share").addEventListener("click", () => navigator.share({files: [file()]}).then(
      () => tellSaving("Shared as " + fileName + "."),
      () => tell("kept-said", "Nothing was shared. Save the file instead, or copy the answers.")));

  /* Some browsers let no page write to the clipboard: then the text is there, chosen, to copy by hand. */
  const offerText = () => {
    element("file-text").closest("details").open = true;
    element("file-text").select();
    tell("kept-said", "Copy the text that is marked below, and paste it into a message.");
  };
  element("copy").addEventListener("click", () => navigator.clipboard
      ? navigator.clipboard.writeText(csv()).then(() => tellSaving("Copied. Paste it into a message."), offerText)
      : offerText());
  element("file-text").addEventListener("copy", () => {
    countSave();
    update();
  });

  let clearing = false;
  element("clear").addEventListener("click", () => {
    clearing = !clearing;
    element("clear").textContent = clearing ? "Really clear all my answers?" : "Clear my answers";
    if (clearing) {
      tell("kept-said", "Press again to clear all answers on this page.");
      return;
    }
    places.forEach(place => {
      place.fill("");
      show(place);
    });
    update();
    store.clear();
    tell("kept-said", "All answers on this page are cleared.");
  });
  element("clear").addEventListener("blur", () => {
    clearing = false;
    element("clear").textContent = "Clear my answers";
  });

  page.lookUp();
  element("problems").querySelector("details").open = matchMedia("(min-width: 62rem)").matches;
  element("keeping").hidden = false;
  element("turn").hidden = false;
  lastSave();
  saves.write(counted);
  follow();
  update();
  tellSaved();
  window.addEventListener("resize", () => page.reachable(document.body));
  performance.mark("ready");
})();
