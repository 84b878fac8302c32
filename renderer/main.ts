import { mount } from 'svelte'
import App from './App.svelte'
import './look/fonts.css'
import './look/tokens.css'
import './look/base.css'
import './look/tables.css'
import './look/wall.css'

mount(App, { target: document.body })
