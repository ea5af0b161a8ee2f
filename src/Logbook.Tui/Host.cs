using Logbook.Screens;
using System.Runtime.InteropServices;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Views;

namespace Logbook.Tui;

/// <summary>The one place that owns the toolkit, signals and the state of the terminal: however the screen ends, the terminal is left as it was.</summary>
internal static class Host
{
    public const int NoTerminal = 69;

    // Keypad digits arrive as digits again: the runtime has switched them to End, Page Down and the like.
    private const string KeypadDigits = "\e>";

    // A pasted text comes as one, not as keys.
    private const string PasteAsOne = "\e[?2004h";

    /// <summary>Why no screen can be drawn here, in one line; null when it can. The toolkit itself would wait for ever.</summary>
    public static string? WhyNot() => !Driver.IsAttachedToTerminal(out _, out _) ? "the screen needs a terminal"
        : Environment.GetEnvironmentVariable("TERM") is null or "" or "dumb" ? "TERM says that this terminal cannot draw"
        : null;

    /// <summary>Comes back when the person has left, or when something else ended the screen.</summary>
    public static Ending Run(Func<Surface> make)
    {
        using var terminal = new TerminalState();
        using var signals = new Signals();
        var app = Application.Create();
        try
        {
            app.Init();
            terminal.IsDrawn();
            app.Driver!.WriteRaw(KeypadDigits);
            app.Driver.Force16Colors = Looks.IsPoor(Environment.GetEnvironmentVariable("TERM"));
            app.Iteration += (_, _) => Turn(app, signals, terminal);
            app.Paste += (_, pasted) =>
            {
                pasted.Handled = true;
                (app.TopRunnableView as Surface)?.Take(new Pasted(pasted.Text));
            };
            using var surface = make();
            app.Run(surface);
            return new Ending(signals.Asked, terminal.IsGone);
        }
        finally
        {
            Close(app, terminal);
        }
    }

    private static void Turn(IApplication app, Signals signals, TerminalState terminal)
    {
        if ((signals.Asked is not null || terminal.IsGone) && app.TopRunnable is { } top)
        {
            app.RequestStop(top);
        }

        if (signals.TakeContinued())
        {
            terminal.TakeBack();
            app.Driver!.WriteRaw(KeypadDigits + PasteAsOne);
            app.ClearScreenNextIteration = true; // the shell has written over it
            app.LayoutAndDraw(true);
        }
    }

    /// <summary>
    /// After a hang-up the toolkit's reader never ends: it is waited for a second, then left to end with the process. While the
    /// terminal is there it is given time, for what the toolkit puts back late hides what is said after it.
    /// </summary>
    private static void Close(IApplication app, TerminalState terminal)
    {
        if (Task.Run(app.Dispose).Wait(TimeSpan.FromSeconds(terminal.IsGone ? 1 : 20)))
        {
            terminal.IsRestored();
        }
    }
}

/// <summary>How the screen ended.</summary>
/// <param name="By">The signal that asked for it; null when the person left.</param>
/// <param name="Gone">There is no terminal any more to say it on.</param>
internal sealed record Ending(string? By, bool Gone);
