import { mount } from "svelte";
import "./ui/theme.css";
import "./ui/plot.css";
import "./ui/print.css";
import App from "./App.svelte";
import { session } from "./session.svelte.ts";
import { browserLocale, writeBy } from "./way-of-writing.ts";
import { paper } from "./ui/paper.svelte.ts";

const target = document.getElementById("app");
if (!target) throw new Error("The page has no place with the id app.");
paper.recall();
writeBy(() => session.writing ?? browserLocale());
void session.start();
mount(App, { target });
