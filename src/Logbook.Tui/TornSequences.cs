using System.Text;
using Logbook.Screens;

namespace Logbook.Tui;

/// <summary>
/// On a busy machine or a slow line a key's sequence may arrive torn: the toolkit takes its first byte for Esc, and the rest
/// would be letters that command something. What follows Esc as the rest of a sequence does is dropped.
/// </summary>
/// <param name="clock">Tells how long ago Esc was.</param>
internal sealed class TornSequences(TimeProvider clock)
{
    // Longer than a loaded machine tears a sequence apart, shorter than a person finds the next key. Judgement, no source.
    private static readonly TimeSpan Together = TimeSpan.FromMilliseconds(250);

    private Part _at;
    private long _since;

    /// <summary>Where in a sequence the next character stands (ECMA-48, 5.4: an introducer, parameters, one final byte).</summary>
    private enum Part
    {
        Outside,
        Begun,
        LastOne,
        Parameters,
    }

    /// <summary>True for a key that is a piece of a torn sequence.</summary>
    public bool Has(Keystroke key)
    {
        if (key.Name == KeyName.Esc)
        {
            (_at, _since) = (Part.Begun, clock.GetTimestamp());
            return false;
        }

        var within = _at != Part.Outside && key.Name == KeyName.Written && clock.GetElapsedTime(_since) < Together;
        (var torn, _at) = within ? Next(key.Rune) : (false, Part.Outside);
        return torn;
    }

    private (bool Torn, Part At) Next(Rune rune) => (_at, rune.Value) switch
    {
        (Part.Begun, '[') => (true, Part.Parameters),
        (Part.Begun, 'O') => (true, Part.LastOne), // keys of the keypad and the first function keys
        (Part.LastOne, _) => (true, Part.Outside),
        (Part.Parameters, >= '0' and <= '?') => (true, Part.Parameters),
        (Part.Parameters, >= '@' and <= '~') => (true, Part.Outside),
        _ => (false, Part.Outside),
    };
}
