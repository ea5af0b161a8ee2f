using Terminal.Gui.App;
using Terminal.Gui.Views;

Application.MaximumIterationsPerSecond = 100;
using var app = Application.Create();
app.Init();
using var window = new Window();
window.Add(new Label { Text = "a bare window" });
app.Run(window);
