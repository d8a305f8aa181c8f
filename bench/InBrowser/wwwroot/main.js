import { dotnet } from "./_framework/dotnet.js";
const runtime = await dotnet.create();
globalThis.engine = (await runtime.getAssemblyExports("SecondShore.InBrowser")).SecondShore.InBrowser.Program;
