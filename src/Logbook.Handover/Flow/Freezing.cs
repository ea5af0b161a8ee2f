using System.Security.Cryptography;
using System.Text;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Between a note that can still change and its lines as they stood when somebody signed them.</summary>
internal static class Freezing
{
    public static FrozenNote Of(HandoverNote note) => new(
        note.ShiftId, note.Period, note.DrawnAt, note.TakeLonger,
        [.. note.Sections.Select(s => new FrozenSection(s.Id, s.Title, s.Beside, [.. s.Lines.Select(l => new FrozenLine(l.Label, l.Text))]))],
        [.. note.Cautions.Select(c => new FrozenCaution(c.Hazard, c.Text, c.Ppe, c.FirstAid, c.Source, c.Revision, c.Draft))]);

    public static IReadOnlyList<NoteSection> Sections(FrozenNote note) =>
        [.. note.Sections.Select(s => new NoteSection(s.Id, s.Title, [.. s.Lines.Select(l => new NoteLine(l.Label, l.Text))]) { Beside = s.Beside })];

    public static IReadOnlyList<NoteCaution> Cautions(FrozenNote note) =>
        [.. note.Cautions.Select(c => new NoteCaution(c.Hazard, c.Text, c.Ppe, c.FirstAid, c.Source, c.Revision, c.Draft))];

    /// <summary>Hex SHA-256 of the note's lines, one below the other, in UTF-8.</summary>
    public static string Hash(FrozenNote note)
    {
        IEnumerable<string> lines =
        [
            note.Shift, note.Period, note.Drawn, .. note.TakeLonger,
            .. note.Sections.SelectMany(s => s.Lines.Select(l => $"{l.Label}\t{l.Text}").Prepend($"{s.Id}\t{s.Title}\t{s.Beside}")),
            .. note.Cautions.Select(c => string.Join('\t', c.Hazard, c.Text, c.Ppe, c.FirstAid, c.Source, c.Revision, c.Draft ? "draft" : "approved")),
        ];
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines))));
    }
}
