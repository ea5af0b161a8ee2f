using System.Text;
using Logbook.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Input;
using Terminal.Gui.Text;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Line = Logbook.Screens.Line;

namespace Logbook.Tui;

/// <summary>The one window: it draws the sheet's lines and sends keys. It has no views of its own and decides nothing.</summary>
internal sealed class Surface : Runnable
{
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(1);

    // Longer than a turn of the loop: the screen says first that it is at work.
    private static readonly TimeSpan Drawn = TimeSpan.FromMilliseconds(30);

    private readonly Conversation _conversation;
    private readonly Looks _looks;
    private bool _working;

    public Surface(Conversation conversation, Looks looks)
    {
        _conversation = conversation;
        _looks = looks;
        CanFocus = true;
        Initialized += (_, _) => App!.AddTimeout(Tick, () =>
        {
            Take(new Ticked());
            return true;
        });
    }

    /// <summary>Takes a message, and draws or ends as the state then says.</summary>
    public void Take(Message message)
    {
        _conversation.Take(message);
        if (_conversation.Over)
        {
            App!.RequestStop(this);
        }

        SetNeedsDraw();
        if (_conversation.Waiting && !_working)
        {
            _working = true;
            App!.AddTimeout(Drawn, Work);
        }
    }

    /// <summary>One piece of what is slow; keys and drawing come in between.</summary>
    private bool Work()
    {
        _conversation.Work();
        SetNeedsDraw();
        return _working = _conversation.Waiting;
    }

    /// <summary>Every key is ours, Esc above all, which would otherwise end the program; only the terminal's own suspend goes through.</summary>
    protected override bool OnKeyDown(Key key)
    {
        if (key == Key.Z.WithCtrl)
        {
            return false;
        }

        if (Keystrokes.Of(key) is { } stroke)
        {
            Take(new Pressed(stroke));
        }

        return true;
    }

    protected override bool OnClearingViewport() => true; // every cell is drawn below

    protected override bool OnDrawingContent(DrawContext? context)
    {
        _conversation.Take(new Resized(Viewport.Width, Viewport.Height));
        var lines = _conversation.Sheet.Lines;
        for (var y = 0; y < Viewport.Height; y++)
        {
            Move(0, y);
            Draw(y < lines.Count ? lines[y] : new Line([]));
        }

        return true;
    }

    private void Draw(Line line)
    {
        var left = Viewport.Width;
        foreach (var span in line.Spans.Where(s => s.Text.Length > 0))
        {
            SetAttribute(_looks.Of(span.Look));
            AddStr(span.Text);
            left -= span.Text.GetColumns();
        }

        SetAttribute(_looks.Of(Look.Plain));
        AddStr(new string(' ', Math.Max(0, left)));
    }
}
