namespace Logbook.Handover;

/// <summary>Flags of the audit as lines: what carries several flags is one line with all of them.</summary>
internal static class FlagLines
{
    public static NoteSection Of(WeekFacts week, string id, string title, params IReadOnlyList<string> flags) => NoteSection.Of(
        id,
        title,
        from flag in Audit.Of(week.Span, flags)
        group flag by (flag.Text, flag.Seq) into one
        let words = string.Join(", ", one.Select(f => f.Flag.Replace('-', ' ')))
        select new NoteLine(words, string.Join(' ', one.First().Evidence.Prepend(Say.Sentence(one.First().Text)))));
}
