"use strict";
// What every page needs: the look (light or dark), ages of dates, the search box in
// the header. Plain script, loaded before the page is drawn so that the look does not flash.
(function () {
  const root = document.documentElement;
  const kept = {
    get(name) { try { return localStorage.getItem(name); } catch { return null; } },
    set(name, value) { try { localStorage.setItem(name, value); } catch { /* kept for this page only */ } },
  };
  root.className = window === parent ? "js" : "js framed"; // in a sheet of a walk
  if (kept.get("look")) root.dataset.look = kept.get("look");

  function isDark() {
    return root.dataset.look ? root.dataset.look === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
  }

  function lookButton(button) {
    const show = () => { button.textContent = isDark() ? "Light mode" : "Dark mode"; };
    button.hidden = false;
    show();
    button.addEventListener("click", () => {
      root.dataset.look = isDark() ? "light" : "dark";
      kept.set("look", root.dataset.look);
      show();
    });
  }

  // The same files give the same bytes on any day, so the page itself says how old a date is.
  function age(element) {
    const months = Math.floor((Date.now() - Date.parse(element.dateTime)) / 2629800000);
    if (!(months >= 1)) return;
    const years = Math.floor(months / 12);
    const words = years >= 2 ? `${years} years ago` : `${months} ${months === 1 ? "month" : "months"} ago`;
    element.after(` (${words})`);
    if (months >= Number(element.dataset.goodFor || Infinity)) overdue(element);
  }

  function overdue(element) {
    const mark = document.createElement("span");
    mark.className = "overdue";
    mark.textContent = " review overdue";
    element.parentElement.append(mark);
  }

  // Submitting the box in the header opens the first page with the words in its address.
  function headerSearch(form) {
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      location.href = `${form.getAttribute("action")}#q=${encodeURIComponent(form.elements.q.value)}`;
    });
  }

  // The square code of a print has the printed revision: warn if the page has another one.
  function printed(banner) {
    const revision = new URLSearchParams(location.search).get("printed");
    if (!revision || revision === banner.dataset.revision) return;
    banner.textContent = `Your printout is old (${revision.slice(0, 12)}; now `
      + `${banner.dataset.revision}). Use this page, and hang a new print.`;
    banner.hidden = false;
  }

  document.addEventListener("DOMContentLoaded", () => {
    document.querySelectorAll("[data-look]:is(button)").forEach(lookButton);
    document.querySelectorAll("time[datetime]").forEach(age);
    document.querySelectorAll("form[data-find]").forEach(headerSearch);
    document.querySelectorAll("[data-revision]").forEach(printed);
  });
})();
