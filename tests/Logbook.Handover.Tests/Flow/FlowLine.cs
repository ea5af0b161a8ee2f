using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>The small line with people who sign. Their PINs cost one round here, so that tests are quick.</summary>
internal sealed class FlowLine : IDisposable
{
    public const string Pin = "274951";

    public FlowLine(string begins)
        : this(new SmallLine(begins))
    {
    }

    public FlowLine(SmallLine line)
    {
        Line = line;
        Pins = new Pins(Kept, rounds: 1);
        foreach (var person in line.Desk.Site.People)
        {
            Pins.Set(person.Code, Pin);
        }
    }

    public SmallLine Line { get; }

    public PinsInMemory Kept { get; } = new();

    public Pins Pins { get; }

    public Checks.Desk Desk => Line.Desk;

    public LineHeld Held => Desk.State.Line;

    public string? Holder => Held.Holder?.Code;

    public SignWith Sign(string? pin = Pin, string? witness = null) => new(Pins, _ => pin, witness);

    public static Dictionary<string, string> All(string answer) => HazardSections.All.ToDictionary(s => s, _ => answer, StringComparer.Ordinal);

    public Handed Prepare(string by, params string[] words) =>
        Preparing.Prepare(Desk, Sign(), new PrepareRequest(by, All("checked"), ["if it turns, then call instrument duty"], words));

    public void OpenAll(string by)
    {
        foreach (var page in LineHeld.Pages)
        {
            Assert.NotNull(HandoverPages.Open(Desk, by, page).Page);
        }
    }

    public IReadOnlyList<int> RightAnswers(string by) => [.. HazardQuestions.For(Desk, by).Select(q => q.Right)];

    public Handed Accept(string by, params string[] first) => Accept(new AcceptRequest(by, first, RightAnswers(by)));

    public Handed Accept(AcceptRequest request) => Accepting.Accept(Desk, Sign(), request);

    /// <summary>The line is taken over from nobody: how a new journal begins.</summary>
    public FlowLine HeldBy(string code)
    {
        OpenAll(code);
        Assert.NotNull(Accept(new AcceptRequest(code, ["flow by hand first"], RightAnswers(code)) { Unattended = "the first shift of this log" }).Record);
        return this;
    }

    /// <summary>A whole handover as it should be.</summary>
    public FlowLine HandedTo(string code)
    {
        Assert.NotNull(Prepare(Holder!).Record);
        OpenAll(code);
        Assert.NotNull(Accept(code, "nothing beyond the list").Record);
        return this;
    }

    public void Dispose() => Line.Dispose();
}
