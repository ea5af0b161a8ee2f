namespace Logbook.Handover;

/// <summary>What the tanks held at their newest reading; an old one says how old it is.</summary>
internal static class StocksHeld
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of("stocks", "STOCKS", Stock.Of(facts.Site, facts.State).Select(s => new NoteLine(
        Say.Visible(s.Point),
        $"{s.Title} {s.Value} at {facts.Time(s.At)}{(facts.AsOf - s.At > s.Fresh ? ", OLD" : "")} {Say.Ref(s.Seq)}")));
}
