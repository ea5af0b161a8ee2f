using System.Collections.Immutable;

namespace Logbook.Handover;

/// <summary>Everybody's PIN as it is kept, and how often it was typed wrongly of late.</summary>
public sealed record PinBook(ImmutableSortedDictionary<string, KeptPin> Pins)
{
    public static readonly PinBook Empty = new(ImmutableSortedDictionary.Create<string, KeptPin>(StringComparer.OrdinalIgnoreCase));

    public PinBook With(string code, KeptPin pin) => new(Pins.SetItem(code, pin));
}

/// <param name="Wrong">Wrong PINs in a row.</param>
/// <param name="LastWrong">When the last of them was typed; null when there is none.</param>
public sealed record KeptPin(PinHash Pin, int Wrong, DateTimeOffset? LastWrong)
{
    // Two slips cost nothing. Judgement; NIST SP 800-63B, 5.2.2, asks for growing waits of up to an hour (from memory).
    private const int Free = 2;
    private static readonly TimeSpan First = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(15);

    /// <summary>How long to wait after so many wrong PINs in a row: it grows, and ends at a quarter of an hour. Nobody is locked out.</summary>
    public static TimeSpan WaitAfter(int wrong) =>
        wrong <= Free ? TimeSpan.Zero : TimeSpan.FromTicks(Math.Min(Longest.Ticks, First.Ticks << Math.Min(wrong - Free - 1, 20)));

    /// <summary>What is left to wait. A clock that was set back does not lengthen it beyond its whole.</summary>
    public TimeSpan Waits(DateTimeOffset now) =>
        LastWrong is { } last && WaitAfter(Wrong) - (now - last).Duration() is var left && left > TimeSpan.Zero ? left : TimeSpan.Zero;
}

/// <summary>Where the book lies. It is no part of the journal and is never exported.</summary>
public interface IPinKeep
{
    PinBook Read();

    /// <summary>Changes the book while no other terminal can, and returns when it is on the disk.</summary>
    T Change<T>(Func<PinBook, (PinBook Book, T Answer)> change);
}

/// <summary>A book in memory: for tests, and for the demo's simulated past.</summary>
public sealed class PinsInMemory : IPinKeep
{
    private PinBook _book = PinBook.Empty;

    public PinBook Read() => _book;

    public T Change<T>(Func<PinBook, (PinBook Book, T Answer)> change)
    {
        (_book, var answer) = change(_book);
        return answer;
    }
}
