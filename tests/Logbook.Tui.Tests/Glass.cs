using System.Runtime.CompilerServices;
using System.Text;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Screens;
using Logbook.Plant;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Text;
using Terminal.Gui.Time;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace Logbook.Tui.Tests;

internal static class NoRealTerminal
{
    [ModuleInitializer]
    internal static void Say() => Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
}

/// <summary>The surface on a terminal that is only memory: keys are sent, cells are read.</summary>
internal sealed class Glass : IDisposable
{
    private readonly VirtualTimeProvider _time = new();
    private readonly FakeTimeProvider _clock = new();
    private readonly IApplication _app;
    private readonly SessionToken? _session;
    private readonly Surface _surface;
    private readonly DraftFolder _drafts;
    private readonly string _folder = Directory.CreateTempSubdirectory("logbook-tui-").FullName;

    public Glass(int width = 80, int height = 24, bool colour = true, SiteFiles? files = null)
    {
        Journal = new InMemoryJournal();
        var clock = new FakeTimeProvider(Some.Morning.AddHours(-1));
        Desk = Some.Desk(clock, Journal, files);
        RecordEntry.Run(Desk, Some.Entry("SL-F1=150"));
        clock.SetUtcNow(Some.Morning);
        _drafts = new DraftFolder(_folder, "host:tty1");
        var pins = new Pins(new PinsInMemory(), rounds: 1);
        pins.Set("op1", Pin);
        _app = Application.Create(_time).Init(DriverRegistry.Names.ANSI);
        _app.Driver!.SetScreenSize(width, height);
        _surface = new Surface(Task.FromResult(new Conversation(Desk, "op1", _drafts, pins)), new Looks(colour), _clock);
        _session = _app.Begin(_surface);
        Turn();
    }

    public const string Pin = "270451";

    public InMemoryJournal Journal { get; }

    public Desk Desk { get; }

    public bool Ended => _surface.StopRequested;

    public string Screen => string.Join('\n', Enumerable.Range(0, _app.Driver!.Rows).Select(Row));

    public Glass Press(params Key[] keys)
    {
        foreach (var key in keys)
        {
            _app.InjectKey(key);
            Turn();
        }

        return this;
    }

    /// <summary>Keys that were waiting: all of them come before the screen is drawn again.</summary>
    public Glass PressAtOnce(params Key[] keys)
    {
        foreach (var key in keys)
        {
            _app.InjectKey(key);
        }

        Turn();
        return this;
    }

    public Glass Type(string text) => Press([.. text.Select(c => new Key(c))]);

    public Glass Paste(string text)
    {
        _surface.Take(new Pasted(text));
        Turn();
        return this;
    }

    /// <summary>Lets the screen's own clock run.</summary>
    public Glass Wait(TimeSpan time)
    {
        _time.Advance(time);
        _clock.Advance(time);
        Turn();
        return this;
    }

    public Glass Size(int width, int height)
    {
        _app.Driver!.SetScreenSize(width, height);
        Turn();
        return this;
    }

    public string Row(int y)
    {
        var cells = _app.Driver!.Contents!;
        var row = new StringBuilder();
        for (var x = 0; x < cells.GetLength(1);)
        {
            row.Append(cells[y, x].Grapheme);
            x += Math.Max(1, cells[y, x].Grapheme.GetColumns());
        }

        return row.ToString().TrimEnd();
    }

    /// <summary>The attribute under the first place where these words stand.</summary>
    public Attribute Under(string words)
    {
        var y = Enumerable.Range(0, _app.Driver!.Rows).First(r => Row(r).Contains(words, StringComparison.Ordinal));
        return _app.Driver.Contents![y, Row(y).IndexOf(words, StringComparison.Ordinal)].Attribute!.Value;
    }

    public void Dispose()
    {
        if (_session?.Runnable is not null)
        {
            _app.End(_session);
        }

        _surface.Dispose();
        _app.Dispose();
        _drafts.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private void Turn()
    {
        _app.LayoutAndDraw();
        _app.TimedEvents!.RunTimers();
        _app.LayoutAndDraw();
    }
}
