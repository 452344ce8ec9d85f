"use strict";
/* What every page with a script uses: its elements, what the browser keeps, the checker, files. */
const page = {
  element: id => document.getElementById(id),

  data: () => JSON.parse(document.getElementById("data").textContent),

  /* A sentence in the language of the page; what fills its slots, by name. */
  says: (key, filled = {}) => says(key, Object.entries(filled).flat().map(String)),
  saysOf: (key, count, filled = {}) => saysOf(key, count, Object.entries(filled).flat().map(String)),

  /* A store in this browser. A browser may refuse one to a page opened from a file: then `works` says so. */
  store(name) {
    const store = {
      works: true,
      read() {
        try {
          return JSON.parse(localStorage.getItem(name));
        } catch (refused) {
          store.works = false;
          return null;
        }
      },
      write(value) {
        try {
          localStorage.setItem(name, JSON.stringify(value));
          store.works = true;
        } catch (refused) {
          store.works = false;
        }
      },
      clear() {
        try {
          localStorage.removeItem(name);
        } catch (refused) {
          store.works = false;
        }
      }
    };
    return store;
  },

  /* One verdict per question of the key. */
  judge(key, typed) {
    const told = judgeAnswers(key, Object.entries(typed).flat());
    const verdicts = [];
    for (let i = 0; i < told.length; i += 5) {
      verdicts.push({question: told[i], rung: told[i + 1], understood: told[i + 2], message: told[i + 3], mistake: told[i + 4]});
    }
    return verdicts;
  },

  /* Every place for an answer under this element, in its order: how to read, fill and mark it. */
  places(under) {
    return Array.from(under.querySelectorAll("[data-question]"), place => {
      const field = place.querySelector("input[type=text]");
      const options = Array.from(place.querySelectorAll("input[type=radio]"));
      const said = place.querySelector(".said");
      return {
        question: place.dataset.question,
        isChoice: field === null,
        typed: () => field ? field.value : (options.find(option => option.checked) || {value: ""}).value,
        fill(text) {
          if (field) {
            field.value = text;
          } else {
            options.forEach(option => { option.checked = option.value === text; });
          }
        },
        focus: () => (field || options.find(option => option.checked) || options[0]).focus(),
        say(kind, text) {
          place.dataset.said = kind;
          said.textContent = text;
          for (const input of field ? [field] : options) {
            if (kind === "wrong") {
              input.setAttribute("aria-invalid", "true");
            } else {
              input.removeAttribute("aria-invalid");
            }
          }
        },
        element: place
      };
    });
  },

  /* Whatever scrolls sideways here must be reachable by keyboard, have a name and show that it does; what does not, is no stop
     for the keyboard. What has the focus keeps it. */
  reachable(under) {
    for (const region of under.querySelectorAll(".equation, .drawing, .scroll, .line, .case, pre")) {
      if (region.scrollWidth > region.clientWidth + 1) {
        const around = region.closest("figure, .step");
        const name = around && around.querySelector("figcaption, .finding") || region.querySelector("caption");
        region.tabIndex = 0;
        region.dataset.sideways = page.says("page.scrolls.sideways");
        if (!region.hasAttribute("role")) {
          region.setAttribute("role", "group");
        }
        if (!region.hasAttribute("aria-label")) {
          region.setAttribute("aria-label", name ? name.textContent : page.says("page.scrolls"));
        }
      } else if (region.clientWidth > 0 && region !== document.activeElement) {
        region.removeAttribute("tabindex");
        delete region.dataset.sideways;
      }
    }
  },

  /* What is looked up lies over the page; the browser leads back to where it was asked for. */
  lookUp() {
    const dialog = page.element("look-up");
    document.querySelectorAll(".look-up-opens").forEach(button => button.addEventListener("click", () => {
      dialog.showModal();
      page.reachable(dialog);
    }));
    page.element("look-up-close").addEventListener("click", () => dialog.close());
  },

  saveFile(name, type, text) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], {type}));
    link.download = name;
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  }
};
/* Before anything else is asked of the checker. */
{
  const {code, sentences, decimal} = JSON.parse(document.getElementById("language").textContent);
  speak(code, sentences, decimal);
  page.comma = decimal === ",";
}
