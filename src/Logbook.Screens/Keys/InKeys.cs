using System.Text.RegularExpressions;

namespace Logbook.Screens;

/// <summary>
/// What the rules say, for who stands at the screen. They name the commands that put a thing right; here those are keys. Only
/// what the program says itself is given to it, never a person's words.
/// </summary>
internal static partial class InKeys
{
    // The longer ones first: each is taken as a whole.
    private static readonly (string Command, string Keys)[] Ways =
    [
        ("take it over with: handover accept --unattended REASON", "o on the pages of h takes it over alone"),
        ("with nobody there: --unattended REASON", "with nobody there o says why you take it alone"),
        ("to take it over alone: --unattended REASON", "o says why you take it alone"),
        ("to go on: handover continue", "to go on: h, then e"),
        ("read it, then: handover question", "read it to its end"),
        ("see: handover question", "they come behind the pages of h"),
        ("handover not-yet", "h, then b"),
        ("each is opened first: handover open PAGE", "h shows each"),
        ("on the page hazards: handover open hazards", "h shows it"),
        ("handover open hazards", "h, then o"),
        ("handover relief --emergency", "!"),
        ("hand over in full, handover prepare and accept", "hand over in full: h"),
        ("handover called CODE TEXT", "h, then c"),
        ("it comes off with the closing: carry close", "it comes off with the closing: x"),
        ("--lock off, once it is off the board", "x asks whether it is off"),
        ("tell it with --changed", "tell it with 2"),
        ("--changed TEXT or --not-seen", "2 or n"),
        ("--owner CODE or --not-seen", "o or n"),
        ("--until TIME or --not-seen", "2 with another end, or n"),
        ("--set allowed-by=CODE with one of: ", "one of: "),
        ("--set allowed-by=CODE", "the code or the name of who did"),
        ("--set point=TAG --set every=30m", "a point, and how often"),
        ("--set NAME=VALUE with: ", "one of: "),
        ("--until TIME", "a time"),
        ("--if \"if ... then ...\"", "a line of if ... then"),
        ("--word TEXT", "a line of own words"),
        ("a few words: --why ", "a few words: "),
        ("; --anew drops it", ""),
        ("--by CODE with one of: ", "i says who types, one of: "),
        (": logbook people pin ", ": at the command line, logbook people pin "),
    ];

    public static string Of(string said) => Field().Replace(Section().Replace(Confirm().Replace(Ways.Aggregate(said, (text, way) => text.Replace(way.Command, way.Keys, StringComparison.Ordinal)), "2 on the permit under c"), "a few words behind 3"), "${name}: ");

    /// <summary><c>carry confirm 44 --set inside=0</c>.</summary>
    [GeneratedRegex(@"carry confirm \S+ --set inside=0", RegexOptions.NonBacktracking)]
    private static partial Regex Confirm();

    /// <summary><c>a few words: --section acid=change:WORDS</c>.</summary>
    [GeneratedRegex(@"a few words: --section \S+=change:WORDS", RegexOptions.NonBacktracking)]
    private static partial Regex Section();

    /// <summary><c>--set number=VALUE</c>.</summary>
    [GeneratedRegex(@"--set (?<name>[^\s=]+)=", RegexOptions.NonBacktracking)]
    private static partial Regex Field();
}
