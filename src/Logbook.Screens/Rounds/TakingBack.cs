namespace Logbook.Screens;

/// <summary>A value typed into the wrong row, taken back before it is saved. What is in the journal is put right in the log.</summary>
internal static class TakingBack
{
    public static string? WhyNot(RoundPage page) => page.AtEnd || !page.Row.Answered ? "nothing stands in this row"
        : page.Row.Line?.Text is null ? $"it is in the journal {Handover.Say.Ref(page.Row.Saved!.Seq)}: in the log c puts it right, or says that it was not taken"
        : null;

    /// <summary>What an empty field may still do.</summary>
    public static string Hint(RoundPage page) => WhyNot(page) is null ? "; Delete takes the value back" : "";

    public static Next Take(Session session, RoundPage page)
    {
        var line = page.Row.Line!;
        page = Judging.WithoutOrder(page.Put(page.Row with { Check = RowCheck.None })) with
        {
            Spoken = [],
            Answered = page.Answered == page.Current ? null : page.Answered,
            Results = page.Results.RemoveRange(page.Results.Keys.Where(derived => page.Links.Makes(line.Point, derived))),
        };
        return Entering.Amend(session.Say($"{line.Text} at {line.Point} is taken back: the row is open"), page, line with { Text = null, Why = null, Second = null, Retyped = line.Retyped ?? (line.Text is "-" ? null : line.Text) });
    }
}
