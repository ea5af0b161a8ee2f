namespace Logbook.Demo;

/// <summary>The clock of the demo's history: it stands until the next person comes to the terminal.</summary>
internal sealed class SimulatedClock(DateTimeOffset start) : TimeProvider
{
    private DateTimeOffset _now = start;

    public override DateTimeOffset GetUtcNow() => _now.ToUniversalTime();

    public void MoveTo(DateTimeOffset at)
    {
        if (at < _now)
        {
            throw new InvalidOperationException($"the demo's clock cannot go back from {_now:O} to {at:O}");
        }

        _now = at;
    }
}
