using System.Text;
using Logbook.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Drawing;
using Terminal.Gui.Input;
using Terminal.Gui.Text;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Attribute = Terminal.Gui.Drawing.Attribute;
using Line = Logbook.Screens.Line;

namespace Logbook.Tui;

/// <summary>The one window: it draws the sheet's lines and sends keys. It has no views of its own and decides nothing.</summary>
internal sealed class Surface : Runnable
{
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(1);

    // So many seconds without a key, and what was used up is given back to the machine: the screen may stand for months.
    private const int Rests = 10;

    // Turns of the loop in a second. While somebody types a key is on the screen within 20 ms; at rest the first one within 60.
    private const ushort Typing = 100;
    private const ushort Resting = 20;

    // Longer than a turn of the loop: the screen says first that it is at work.
    private static readonly TimeSpan Drawn = TimeSpan.FromMilliseconds(30);

    // How often it is looked whether the site is open: a turn of the loop.
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(10);

    private readonly Task<Conversation> _opening;
    private readonly Looks _looks;
    private readonly TornSequences _torn;
    private readonly TypedAhead _ahead;
    private readonly List<Message> _early = [];
    private Conversation? _conversation;
    private bool _working;
    private int _quiet;

    /// <param name="opening">Comes when the site is open; until then keys wait. Cancelled when it could not be opened.</param>
    /// <param name="clock">Tells apart what a person types and what arrives torn.</param>
    public Surface(Task<Conversation> opening, Looks looks, TimeProvider clock)
    {
        _opening = opening;
        _looks = looks;
        _torn = new TornSequences(clock);
        _ahead = new TypedAhead(clock);
        _conversation = opening.IsCompletedSuccessfully ? opening.Result : null;
        CanFocus = true;
        Application.MaximumIterationsPerSecond = Typing;
        Initialized += (_, _) =>
        {
            App!.AddTimeout(Tick, () =>
            {
                Take(new Ticked());
                Rest();
                return true;
            });
            App!.AddTimeout(Turn, Opened);
        };
    }

    /// <summary>Takes a message, and draws or ends as the state then says.</summary>
    public void Take(Message message)
    {
        if (_conversation is not { } conversation)
        {
            _early.Add(message);
            return;
        }

        if (_ahead.Has(message))
        {
            return;
        }

        var pin = conversation.HasPin;
        if (conversation.Take(message))
        {
            SetNeedsDraw();
        }

        if (pin && message is Pressed { Key.Name: KeyName.Enter or KeyName.Esc })
        {
            _ahead.Begin();
        }

        if (conversation.Over)
        {
            App!.RequestStop(this);
        }

        if (conversation.Waiting && !_working)
        {
            _working = true;
            App!.AddTimeout(Drawn, Work);
        }
    }

    /// <summary>The site is open, or could not be: then the screen ends and the command says why.</summary>
    private bool Opened()
    {
        if (!_opening.IsCompleted)
        {
            return true;
        }

        if (!_opening.IsCompletedSuccessfully)
        {
            App!.RequestStop(this);
            return false;
        }

        _conversation = _opening.Result;
        _early.ForEach(Take);
        _early.Clear();
        SetNeedsDraw();
        return false;
    }

    private void Rest()
    {
        if (_conversation is not null && ++_quiet == Rests)
        {
            Application.MaximumIterationsPerSecond = Resting;
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        }
    }

    /// <summary>What is slow is begun, or looked after; keys and drawing come in between.</summary>
    private bool Work()
    {
        if (_conversation!.Work())
        {
            SetNeedsDraw();
        }

        return _working = _conversation.Waiting;
    }

    /// <summary>Every key is ours, Esc above all, which would otherwise end the program; only the terminal's own suspend goes through.</summary>
    protected override bool OnKeyDown(Key key)
    {
        if (key == Key.Z.WithCtrl)
        {
            return false;
        }

        if (key == Key.L.WithCtrl) // as everywhere on a terminal: something else has written over the screen
        {
            App!.ClearScreenNextIteration = true;
            SetNeedsDraw();
        }

        foreach (var stroke in Keystrokes.Of(key).Where(stroke => !_torn.Has(stroke)))
        {
            _quiet = 0;
            Application.MaximumIterationsPerSecond = Typing;
            Take(new Pressed(stroke));
        }

        return true;
    }

    protected override bool OnClearingViewport() => true; // every cell is drawn below

    protected override bool OnDrawingContent(DrawContext? context)
    {
        _conversation?.Take(new Resized(Viewport.Width, Viewport.Height));
        var lines = _conversation?.Sheet.Lines ?? Sheet.Opening.Lines;
        for (var y = 0; y < Viewport.Height; y++)
        {
            Move(0, y);
            Draw(y < lines.Count ? lines[y] : new Line([]));
        }

        _ahead.Drawn();
        return true;
    }

    private void Draw(Line line)
    {
        var left = Viewport.Width;
        foreach (var span in line.Spans.Where(s => s.Text.Length > 0))
        {
            Draw(span.Text, _looks.Of(span.Look));
            left -= span.Text.GetColumns();
        }

        SetAttribute(_looks.Of(Look.Plain));
        AddStr(new string(' ', Math.Max(0, left)));
    }

    /// <summary>A block is as wide as its column; a line under words is under the words alone.</summary>
    private void Draw(string text, Attribute attribute)
    {
        var words = attribute.Style.HasFlag(TextStyle.Underline) ? text.Trim(' ') : text;
        var from = text.IndexOf(words, StringComparison.Ordinal);
        Put(text[..from], _looks.Of(Look.Plain));
        Put(words, attribute);
        Put(text[(from + words.Length)..], _looks.Of(Look.Plain));
    }

    private void Put(string text, Attribute attribute)
    {
        if (text.Length > 0)
        {
            SetAttribute(attribute);
            AddStr(text);
        }
    }
}
