import { mount } from "svelte";
import "./ui/theme.css";
import "./ui/plot.css";
import "./ui/print.css";
import App from "./App.svelte";

const target = document.getElementById("app");
if (!target) throw new Error("The page has no place with the id app.");
mount(App, { target });
