using Logbook.Checks;
using Logbook.Handover;
using Logbook.Screens;

namespace Logbook.Tui;

/// <summary>The program's screen on a terminal.</summary>
public static class Screen
{
    /// <summary>
    /// Opens the screen and comes back when the person leaves it or the terminal goes away. The screen stands at once, and the
    /// site is opened beside it; keys that are pressed meanwhile wait.
    /// </summary>
    /// <param name="open">Opens the desk where entries are written from, hands it over, and closes it when that returns.</param>
    /// <param name="by">Who is typing; asked on the screen when null.</param>
    /// <param name="draftFolder">Where this terminal keeps what was typed and is not yet in the journal.</param>
    /// <param name="pins">By which people sign.</param>
    /// <param name="told">What was said while the desk was opened.</param>
    /// <param name="clock">The time that keys arrive by.</param>
    /// <param name="parting">Where the last line goes: the screen never ends without a word.</param>
    /// <returns>The exit code: what <paramref name="open"/> returned, or 69 when there is no terminal that can draw.</returns>
    public static int Run(Func<Func<Desk, int>, int> open, string? by, string draftFolder, Pins pins, Func<string> told, TimeProvider clock, TextWriter parting)
    {
        if (Host.WhyNot() is { } why)
        {
            return open(_ =>
            {
                Console.Error.WriteLine($"{why}; the commands work without a screen: logbook --help");
                return Host.NoTerminal;
            });
        }

        var ready = new TaskCompletionSource<Conversation>(TaskCreationOptions.RunContinuationsAsynchronously);
        using var left = new ManualResetEventSlim();
        var site = Task.Run(() =>
        {
            try
            {
                return open(desk =>
                {
                    using var drafts = new DraftFolder(draftFolder, desk.Terminal);
                    ready.SetResult(new Conversation(desk, by, drafts, pins, told()));
                    left.Wait();
                    return 0;
                });
            }
            finally
            {
                ready.TrySetCanceled(); // it could not be opened: the screen ends
            }
        });
        Ending ending;
        try
        {
            ending = Host.Run(() => new Surface(ready.Task, Looks.OfEnvironment(), clock));
        }
        finally
        {
            left.Set();
        }

        var code = site.GetAwaiter().GetResult();
        if (ready.Task.IsCompletedSuccessfully && !ending.Gone)
        {
            parting.WriteLine(ready.Task.Result.Parting(ending.By));
        }

        return code;
    }
}
