// Runs in the main process of a program that is timed: says when its first window is on the screen, and when it can be used.
const { app } = require("electron");

const begun = Number(process.env.BENCH_BEGUN);
const say = (what) => process.stdout.write(`bench ${what} ${Date.now() - begun}\n`);
// A page that only says what is being waited for has the shell's own looks and not the program's.
const usable = `new Promise((done) => {
  const look = () => document.documentElement.dataset.ready === "true" &&
    document.querySelector('link[href="/refused.css"]') === null ? done(true) : setTimeout(look, 3);
  look();
})`;

app.once("browser-window-created", (_event, window) => window.once("show", () => say("shown")));
app.on("web-contents-created", (_event, contents) => {
  contents.on("dom-ready", () => {
    contents.executeJavaScript(usable).then(
      () => say("usable"),
      // The page was another one before it was usable.
      () => {},
    );
  });
});
