namespace Logbook.Handover;

/// <summary>Recognises people by their PIN. What it forbids or delays is signing alone: saving and emergency relief ask for none.</summary>
/// <param name="rounds">The cost of a hash made today; a PIN kept at a lower one is hashed anew when it is next typed.</param>
public sealed class Pins(IPinKeep keep, int rounds = PinHash.RoundsToday)
{
    public const int Shortest = 6;
    private const int Longest = 64;

    public bool Has(string code) => keep.Read().Pins.ContainsKey(code);

    /// <summary>Why this is not the person's PIN, in one line; null when it is.</summary>
    public string? WhyNot(string code, string pin, DateTimeOffset now)
    {
        if (!keep.Read().Pins.TryGetValue(code, out var kept))
        {
            return $"{code} has no PIN yet: logbook people pin {code} --by {code}";
        }

        if (kept.Waits(now) is var wait && wait > TimeSpan.Zero)
        {
            return $"after {kept.Wrong} wrong PINs {code} waits another {Words(wait)}; saving and emergency relief go on without a PIN";
        }

        // The slow part stands outside the turn, so that a wrong PIN at one terminal holds no other up.
        return kept.Pin.Is(pin) ? Right(code, pin, kept) : Wrong(code, now);
    }

    /// <summary>Keeps a PIN for a person and forgets the wrong ones before it.</summary>
    public void Set(string code, string pin)
    {
        var made = PinHash.Of(pin, rounds);
        keep.Change(book => (book.With(code, new KeptPin(made, 0, null)), true));
    }

    /// <summary>Why nobody should use this as a PIN; null when it can be one.</summary>
    public static string? WhyWeak(string pin) =>
        pin.Length is < Shortest or > Longest ? $"a PIN has {Shortest} to {Longest} characters"
        : pin.Any(char.IsControl) ? "a PIN has no control characters"
        : pin.Distinct().Count() < 3 ? "a PIN of one or two characters repeated is guessed at once"
        : IsRun(pin, 1) || IsRun(pin, -1) ? "a PIN that counts up or down is guessed at once"
        : null;

    private string? Right(string code, string pin, KeptPin kept)
    {
        var cheap = kept.Pin.Rounds < rounds;
        if (kept.Wrong > 0 || cheap)
        {
            var made = cheap ? PinHash.Of(pin, rounds) : kept.Pin;
            keep.Change(book => (IsStill(book, code, kept.Pin) ? book.With(code, new KeptPin(made, 0, null)) : book, true));
        }

        return null;
    }

    private string Wrong(string code, DateTimeOffset now)
    {
        var wait = keep.Change(book =>
        {
            var kept = book.Pins[code];
            var next = kept with { Wrong = kept.Wrong + 1, LastWrong = now };
            return (book.With(code, next), next.Waits(now));
        });
        return $"that is not {code}'s PIN; " + (wait > TimeSpan.Zero ? $"the next try can be in {Words(wait)}" : "try again") + ", or let another person witness";
    }

    /// <summary>False when the PIN was set anew at another terminal meanwhile.</summary>
    private static bool IsStill(PinBook book, string code, PinHash pin) =>
        book.Pins.TryGetValue(code, out var kept) && kept.Pin.Salt.AsSpan().SequenceEqual(pin.Salt);

    private static bool IsRun(string pin, int step) => pin.Zip(pin.Skip(1)).All(pair => pair.Second - pair.First == step);

    private static string Words(TimeSpan wait) => wait.TotalSeconds < 90 ? Say.Count((int)Math.Ceiling(wait.TotalSeconds), "second") : Say.Count((int)Math.Ceiling(wait.TotalMinutes), "minute");
}
