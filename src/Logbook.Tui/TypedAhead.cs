using Logbook.Screens;

namespace Logbook.Tui;

/// <summary>
/// A PIN takes a moment to be checked, and keys that are pressed or held meanwhile wait with the toolkit: they would fall on a page
/// that nobody has seen yet. What comes before that page is drawn, and what follows it as closely as a held key does, is dropped.
/// </summary>
/// <param name="clock">Tells how long ago the last key was.</param>
internal sealed class TypedAhead(TimeProvider clock)
{
    // Longer than between two strokes of a held key (a console's slowest usual rate is some 11 in a second), shorter than a person
    // needs to read a new page and find a key. Judgement, no source.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    private bool _waits;
    private bool _drawn;
    private long _last;

    /// <summary>A PIN was sent, or left behind: what stands on the screen now is another page.</summary>
    public void Begin() => (_waits, _drawn, _last) = (true, false, clock.GetTimestamp());

    /// <summary>The page stands on the screen.</summary>
    public void Drawn()
    {
        if (_waits && !_drawn)
        {
            (_drawn, _last) = (true, clock.GetTimestamp());
        }
    }

    /// <summary>True for what was typed or pasted before anybody can have seen the page.</summary>
    public bool Has(Message message)
    {
        if (!_waits || message is not (Pressed or Pasted))
        {
            return false;
        }

        _waits = !_drawn || clock.GetElapsedTime(_last) < Pause;
        _last = clock.GetTimestamp();
        return _waits;
    }
}
