using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>How a step is signed: with the signer's own PIN, or a witness's when the signer has forgotten it.</summary>
/// <param name="Ask">Asks for the PIN of the person with this code; null when none was given.</param>
/// <param name="Witness">Code of the person whose PIN stands for a forgotten one.</param>
public sealed record SignWith(Pins Pins, Func<string, string?> Ask, string? Witness = null)
{
    /// <summary>Is told what the signature will mean, before the PIN is asked for; null when that is shown already, or nobody is asked.</summary>
    public Action<string>? Tell { get; init; }

    /// <summary>The same, with something shown before that: only when everything but the PIN is right.</summary>
    public SignWith After(Action show) => this with
    {
        Tell = Tell is not { } tell ? null : means =>
        {
            show();
            tell(means);
        },
    };
}

/// <summary>Signatures by PIN. Each one says in words what it means.</summary>
public static class Signing
{
    public const string Prepared = "prepared; told as far as I know it";
    public const string Accepted = "read, asked, hold the line; I do not vouch for readings I did not take";
    public const string Unattended = "read, nobody there to ask, hold the line; I do not vouch for readings I did not take";
    public const string ShortRelief = "hold the line for less than an hour, then give it back or hand it over in full";
    public const string Emergency = "hold the line at once, without a PIN; what I have not read I still have to open";
    public const string Left = "left the line, without a PIN, with nobody to take it";
    public const string Adopted = "read these files and answer for them";
    public const string Trusted = "know whose code this is and answer for letting it run";
    public const string Closed = "know that it is over: seen by me, or told by who ended it";
    public const string CountedOut = "know that no more than these are inside: counted by me, or told by the attendant";
    public const string Allowed = "allowed it, as it is recorded here";
    public const string Countersigned = "looked at it with those who were there; not a finding about anyone";

    /// <summary>The signature, or why there is none.</summary>
    /// <param name="other">Code of the other side: the same person, or one PIN, cannot sign both.</param>
    internal static (Signed? Signed, string? Refused) Sign(Desk desk, SignWith with, string by, string means, string? other)
    {
        if (with.Witness is { } witness && WhyNoWitness(desk, witness, by, other) is { } unfit)
        {
            return (null, unfit);
        }

        with.Tell?.Invoke(means);
        var whose = with.Witness ?? by;
        if (Check(desk, with, whose) is { } wrong)
        {
            return (null, wrong);
        }

        var reset = desk.State.People.GetValueOrDefault(by)?.Reset;
        return (new Signed(with.Witness is null ? "pin" : "witness", means, Code(desk, with.Witness), reset), null);
    }

    /// <summary>Why this is not the person's PIN; null when it is.</summary>
    public static string? Check(Desk desk, SignWith with, string whose) =>
        desk.Site.FindPerson(whose)?.Code is not { } code ? $"'{whose}' is not a person of this site"
        : LostPins.Set(desk.State, with.Pins, code) is { } set ? $"{LostPins.Words(code, set)}: it has to be reset: logbook people pin {code} --by CODE"
        : !with.Pins.Has(code) ? with.Pins.WhyNot(code, "", desk.Now)
        : with.Ask(code) is not { Length: > 0 } pin ? $"{code}'s PIN was not given: type it when asked, or --pin-file FILE ('-' is standard input)"
        : with.Pins.WhyNot(code, pin, desk.Now);

    private static string? WhyNoWitness(Desk desk, string witness, string by, string? other) =>
        desk.WhyNot(witness).FirstOrDefault() is { } mistake ? $"no witness: {mistake}"
        : Handed.Same(witness, by) ? "a witness is another person"
        : Handed.Same(witness, other) ? $"{Code(desk, witness)} stands on the other side of this handover and cannot witness it: one PIN would sign both sides"
        : null;

    private static string? Code(Desk desk, string? by) => by is null ? null : desk.Site.FindPerson(by)!.Code;
}
