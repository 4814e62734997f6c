/* The offer to keep the whole site on this device, on the home page.
 *
 * In: `baytreeOffline.bytes`, how much the site holds. Out: a button that says so; once the site is
 * kept, whether a newer build is ready. Only where a site is served: a folder needs none of it.
 */
"use strict";
(async () => {
  const place = document.getElementById("offline");
  if (!place || !("serviceWorker" in navigator) || !location.protocol.startsWith("http")
    || document.querySelector('script[src="/reload.js"]')) return; // nor in the preview for authors
  const { element, button } = baytreeDom;
  const size = `${(baytreeOffline.bytes / 1e6).toFixed(1)} MB`;
  const words = element("p", { role: "status" });
  const show = (text, ...more) => { words.textContent = text; place.replaceChildren(words, ...more); place.hidden = false; };

  async function keep() {
    show(`Fetching ${size} …`);
    try {
      const registration = await navigator.serviceWorker.register("worker.js");
      follow(registration);
      await settled(registration.installing);
      show("The whole site is kept on this device.");
    } catch {
      show("The site could not be kept: try again with a good connection.", button(`Keep the whole site (${size})`, keep));
    }
  }

  // A worker that couldn't fetch all is dropped by the browser, which says nothing else.
  const settled = (worker) => new Promise((resolve, reject) => {
    if (!worker) { resolve(); return; }
    worker.addEventListener("statechange", () => {
      if (worker.state === "activated") resolve();
      if (worker.state === "redundant") reject(new Error("not kept"));
    });
  });

  // A newer build waits until it is asked for, so that no page changes under one's hands.
  function follow(registration) {
    const tell = (worker) => {
      if (worker?.state !== "installed" || !navigator.serviceWorker.controller) return;
      show("A newer site is ready.", button("Load it", () => {
        navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
        worker.postMessage("take over");
      }));
    };
    tell(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const { installing } = registration;
      installing?.addEventListener("statechange", () => tell(installing));
    });
  }

  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration) {
    show("Work without a network:", button(`Keep the whole site (${size})`, keep));
    return;
  }
  show("The whole site is kept on this device.");
  follow(registration);
})();
