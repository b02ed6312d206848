import { mount } from "svelte";
import "./ui/theme.css";
import "./ui/plot.css";
import "./ui/print.css";
import App from "./App.svelte";
import { program } from "./offline/kept-program.svelte.ts";
import { session } from "./session.svelte.ts";
import { afterFirstPicture } from "./ui/first-picture.ts";
import { browserLocale, writeBy } from "./way-of-writing.ts";
import { SCREEN_CHOICES } from "./ui/screen-choices.svelte.ts";

const target = document.getElementById("app");
if (!target) throw new Error("The page has no place with the id app.");
for (const choice of SCREEN_CHOICES) choice.recall();
writeBy(() => session.way_of_writing ?? browserLocale());
const opened = session.start();
mount(App, { target });
const shown = opened.then(afterFirstPicture);
void shown.then(() => program.start());
// Whoever needs it meanwhile has it made, and is told what went wrong.
void shown.then(() => session.deriveRest()).catch(() => undefined);
