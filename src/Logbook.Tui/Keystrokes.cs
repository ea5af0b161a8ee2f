using Logbook.Screens;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace Logbook.Tui;

/// <summary>From the toolkit's keys to ours.</summary>
internal static class Keystrokes
{
    /// <summary>
    /// Empty for keys that no screen knows. On a slow line Esc and the key after it arrive as one, which the toolkit takes for that key
    /// with Alt: no screen has such keys, so they are two again. A sequence may begin with Esc and one of two characters: that is none.
    /// </summary>
    public static IReadOnlyList<Keystroke> Of(Key key) => key.IsAlt && !key.IsCtrl && Plain(key.NoAlt) is { Name: KeyName.Written, Rune.Value: not ('[' or 'O') } after
        ? [new Keystroke(KeyName.Esc), after]
        : Plain(key) is { } one ? [one] : [];

    private static Keystroke? Plain(Key key)
    {
        if (Name(key) is { } name)
        {
            return new Keystroke(name);
        }

        var rune = key.AsRune;
        return rune.Value >= ' ' && !key.IsCtrl && !key.IsAlt ? new Keystroke(KeyName.Written, rune) : null;
    }

    private static KeyName? Name(Key key)
    {
        // A line feed arrives as Ctrl+Enter or Ctrl+J: some terminals send it for the keypad's Enter.
        if (key == Key.Enter || key == Key.Enter.WithCtrl || key == Key.J.WithCtrl)
        {
            return KeyName.Enter;
        }

        return key.IsAlt ? null : (key.KeyCode & ~KeyCode.CtrlMask) switch
        {
            KeyCode.Esc => KeyName.Esc,
            KeyCode.CursorUp => KeyName.Up,
            KeyCode.CursorDown => KeyName.Down,
            KeyCode.CursorLeft => KeyName.Left,
            KeyCode.CursorRight => KeyName.Right,
            KeyCode.PageUp => KeyName.PageUp,
            KeyCode.PageDown => KeyName.PageDown,
            KeyCode.Home => KeyName.Home,
            KeyCode.End => KeyName.End,
            KeyCode.Tab => KeyName.Tab,
            KeyCode.Tab | KeyCode.ShiftMask => KeyName.BackTab,
            KeyCode.Backspace => KeyName.Backspace, // with Ctrl too: some terminals send that byte
            KeyCode.Delete => KeyName.Delete,
            _ => null,
        };
    }
}
