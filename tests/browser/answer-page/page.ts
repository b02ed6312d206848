import { mount } from "svelte";
import Questions from "./Questions.svelte";

mount(Questions, { target: document.body });
