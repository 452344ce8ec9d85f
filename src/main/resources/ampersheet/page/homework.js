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
      return ["read", page.says("page.homework.chose", {option: typed})];
    }
    const [kind, text, inUnit] = readAnswer(typed, units[place.question]);
    switch (kind) {
      case "value":
        return ["read", page.says("page.homework.entered", {value: text})];
      case "number":
        return bare.includes(place.question)
            ? ["read", page.says("page.homework.entered", {value: inUnit})]
            : ["form", page.says("page.homework.entered.no-unit", {value: text})];
      case "ambiguous":
        return ["form", page.says(page.comma ? "page.homework.ambiguous.comma" : "page.homework.ambiguous", {meanings: text})];
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

  const STATES = {none: "page.homework.blank", form: "page.homework.unclear", read: "page.homework.filled"};
  const stateOf = place => readBack(place)[0];

  const counts = some => Object.keys(STATES).reverse()
      .map(state => [some.filter(place => stateOf(place) === state).length, state])
      .filter(([count]) => count > 0)
      .map(([count, state]) => page.says("page.homework.counted", {count, state: page.says(STATES[state])}))
      .join(page.says("list.comma"));

  /* What is blank or unclear, by problems, each with the way to it. */
  const listOpen = () => {
    const rows = problems.map(problem => {
      const open = problem.places.filter(place => stateOf(place) !== "read");
      const row = document.createElement("li");
      row.append(page.says("page.homework.open", {number: problem.number}), " ");
      open.forEach((place, index) => row.append(index > 0 ? page.says("list.comma") : "", link(place.target, place.question),
          " " + page.says(STATES[stateOf(place)])));
      return open.length > 0 ? row : null;
    });
    element("open-places").replaceChildren(...rows.filter(row => row !== null));
  };

  const update = () => {
    const count = Object.keys(answers()).length;
    const unclear = places.filter(place => stateOf(place) === "form").length;
    element("tally").textContent = page.says(unclear > 0 ? "page.homework.tally.unclear" : "page.homework.tally",
        {count, all: places.length, unclear});
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
        ? page.says("page.homework.kept")
        : page.says("page.homework.kept.not");
  };

  /* Once saved, what was said of it holds until an answer changes. */
  const tellSaved = (how, done) => tell("kept-said", counted.save === 0 ? ""
      : isSaved() ? (how || page.says("page.homework.saved")) + (done ? " " + done : "")
      : page.says("page.homework.changed"));

  const tellSaving = how => {
    countSave();
    const open = counts(places.filter(place => stateOf(place) !== "read"));
    tellSaved(how, open ? page.says("page.homework.open-places", {counts: open}) : page.says("page.homework.every-place"));
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
    element("progress").textContent = page.says("page.homework.progress",
        {number: problems[at].number, all: problems.length, tally: element("tally").textContent});
  };

  const turn = (id, index, key) => {
    const to = problems[index];
    element(id).hidden = !to;
    if (to) {
      element(id).href = to.link.hash;
      element(id).textContent = page.says(key, {problem: to.link.textContent});
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
    turn("before", at - 1, "page.homework.back");
    turn("next", at + 1, "page.homework.next");
    if (at + 1 === problems.length) {
      element("next").hidden = false;
      element("next").href = "#keeping-title";
      element("next").textContent = page.says("page.homework.next.handing-in");
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
    tellSaving(page.says("page.homework.saved.as", {file: fileName}));
  });

  const file = () => new File([csv()], fileName, {type: "text/csv"});
  element("share").hidden = !(navigator.canShare && navigator.canShare({files: [file()]}));
  element("share").addEventListener("click", () => navigator.share({files: [file()]}).then(
      () => tellSaving(page.says("page.homework.shared.as", {file: fileName})),
      () => tell("kept-said", page.says("page.homework.shared.not"))));

  /* Some browsers let no page write to the clipboard: then the text is there, chosen, to copy by hand. */
  const offerText = () => {
    element("file-text").closest("details").open = true;
    element("file-text").select();
    tell("kept-said", page.says("page.homework.copy-by-hand"));
  };
  element("copy").addEventListener("click", () => navigator.clipboard
      ? navigator.clipboard.writeText(csv()).then(() => tellSaving(page.says("page.homework.copied")), offerText)
      : offerText());
  element("file-text").addEventListener("copy", () => {
    countSave();
    update();
  });

  let clearing = false;
  element("clear").addEventListener("click", () => {
    clearing = !clearing;
    element("clear").textContent = page.says(clearing ? "page.homework.clear.really" : "page.homework.clear");
    if (clearing) {
      tell("kept-said", page.says("page.homework.clear.again"));
      return;
    }
    places.forEach(place => {
      place.fill("");
      show(place);
    });
    update();
    store.clear();
    tell("kept-said", page.says("page.homework.clear.done"));
  });
  element("clear").addEventListener("blur", () => {
    clearing = false;
    element("clear").textContent = page.says("page.homework.clear");
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
