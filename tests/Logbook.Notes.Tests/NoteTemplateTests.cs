using System.Security.Cryptography;

namespace Logbook.Notes.Tests;

public sealed class NoteTemplateTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("logbook-notes-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_first_folder_that_has_the_file_wins()
    {
        File.WriteAllText(Own, "Our own note of {{ note.shift }}");

        Assert.Contains("\nOur own note of 2026-11-24-N-C\n", Note(), StringComparison.Ordinal);
        Assert.StartsWith("WORD  ", Notes.Write(Notes.With("word"), NoteFormat.Text, Path.Combine(_folder, "missing")), StringComparison.Ordinal);
    }

    /// <summary>The hash is that of the file, as sha256sum gives it (FIPS 180-4, by the base library).</summary>
    [Theory]
    [InlineData(NoteFormat.Text, "All is well.")]
    [InlineData(NoteFormat.Markdown, "All is well.")]
    [InlineData(NoteFormat.Html, "<html><body>All is well.</body></html>")]
    [InlineData(NoteFormat.Html, "All is well.")]
    public void A_note_that_the_sites_own_template_drew_says_so_at_its_foot_and_one_by_the_shipped_one_too(NoteFormat format, string template)
    {
        var file = TemplateName.Of(NoteKind.Handover, format).File;
        var shipped = Notes.Write(Notes.With("word"), format);
        File.WriteAllText(Path.Combine(_folder, file), template);
        var own = Notes.Write(Notes.With("word"), format, _folder);

        var hash = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(_folder, file))))[..12];
        Assert.Contains(Bare(Escape.For(format, $"Drawn by the site's own template {file}, SHA-256 {hash}...: it may say what the journal does not.")), Foot(own), StringComparison.Ordinal);
        Assert.Contains(Bare(Escape.For(format, $"Drawn by the shipped template {file}.")), Foot(shipped), StringComparison.Ordinal);
        Assert.DoesNotContain("site'sown", Bare(shipped), StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_whose_own_template_cannot_be_used_is_the_shipped_ones()
    {
        File.WriteAllText(Own, "{{ nothing }}");

        Assert.Contains(Bare("Drawn by the shipped template handover.text.scriban."), Foot(Note()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("one\ntwo {{ note.shift + }}", "2:21")] // half a sum
    [InlineData("one\n{{ for x in note.sections }}", "2:27")] // no end
    [InlineData("{{ nothing }}", "1:4")] // an unknown name
    [InlineData("{{ note.nothing }}", "1:9")] // an unknown part of the note
    [InlineData("\n\n  {{ include 'other' }}", "3:6")] // no other files
    [InlineData("{{ date.now }}", "1:4")] // no clock
    [InlineData("{{ object.eval '1 + 1' }}", "1:4")] // no evaluation
    [InlineData("{{ while true }}x{{ end }}", "1:4")] // an endless loop
    [InlineData("{{ func f; f; end; f }}", "1:12")] // an endless call
    [InlineData("{{ for i in 1..1000 }}{{ for j in 1..1000 }}{{ for k in 1..1000 }}x{{ end }}{{ end }}{{ end }}", "1:")]
    [InlineData("{{ s = 'x' }}{{ for i in 1..60 }}{{ s = s + s }}{{ end }}{{ s }}", "1:")] // ever longer
    [InlineData("{{ 'x' | string.pad_right 2000000000 }}", "1:")]
    public void A_bad_template_is_one_line_with_its_place_and_the_shipped_one_takes_over(string template, string place)
    {
        File.WriteAllText(Own, template);

        var note = Note();

        // In 72 columns the line goes on below: taken together again, without the spaces that wrapping moves.
        var joined = Bare(note);
        Assert.Contains($"TEMPLATE{Own}:{place}", joined, StringComparison.Ordinal);
        Assert.Contains("theshippedtemplatewasused", joined, StringComparison.Ordinal);
        Assert.Contains("CAN HURT", note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{{ note.sections.count }}")]
    [InlineData("{{ note.sections.length }}")]
    [InlineData("{{ note.shift.length }}")]
    [InlineData("{{ note.get_type }}")]
    public void No_member_of_the_programs_own_objects_can_be_reached(string template)
    {
        File.WriteAllText(Own, template);

        Assert.Contains(Bare("the shipped template was used"), Bare(Note()), StringComparison.Ordinal);
    }

    [Fact]
    public void Values_are_escaped_whatever_the_template_does_with_them()
    {
        File.WriteAllText(Path.Combine(_folder, "handover.html.scriban"), "<p>{{ note.site + '<b>' }}{{ note.site | string.upcase }}</p>");

        Assert.Contains("<p>&lt;i&gt;&lt;b&gt;&lt;I&gt;</p>\n<p class=\"drawn-by\">", Notes.Write(Notes.With("<i>"), NoteFormat.Html, _folder), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("handover.text.scriban", "")]
    [InlineData("handover.text.scriban", "{{ for s in note.sections }}{{ if s.id != 'can-hurt' }}{{ s.title }}{{ end }}{{ end }}")] // the hazards' section
    [InlineData("handover.text.scriban", "{{ for s in note.sections }}{{ for l in s.lines }}{{ l.text | string.truncate 20 }}{{ end }}{{ end }}")] // cut
    [InlineData("handover.text.scriban", "{{ for s in note.sections }}{{ s.lines.size }} {{ end }}")] // counted
    [InlineData("handover.html.scriban", "<!-- {{ for s in note.sections }}{{ for l in s.lines }}{{ l.text }}{{ end }}{{ end }} -->")] // hidden
    [InlineData("handover.md.scriban", "nothing to see")]
    [InlineData("long.text.scriban", "nothing to see")]
    public void Whatever_a_sites_own_template_leaves_out_that_can_hurt_is_printed_above_it_and_told_by_the_check(string file, string template)
    {
        var own = Path.Combine(_folder, file);
        File.WriteAllText(own, template);
        var name = TemplateName.Of(own)!;

        var trial = TemplateTrial.Of(own, name);
        var print = Bare(Notes.Write(ExampleNote.Shift, name.Kind, name.Format, _folder));

        Assert.Contains(Bare("LEFT OUT BY THE SITE"), print, StringComparison.Ordinal);
        foreach (var line in ExampleNote.Shift.Sections.Single(s => s.Id == "can-hurt").Lines)
        {
            Assert.Contains(Bare(Escape.For(name.Format, line.Text)), print, StringComparison.Ordinal);
            Assert.Contains($"{line.Label}: {line.Text}", trial.LeftOut, StringComparer.Ordinal);
        }

        Assert.Contains("06:45: CAN HURT: Example isolation opened. (#22)", trial.LeftOut, StringComparer.Ordinal);
    }

    [Fact]
    public void A_single_hazard_that_a_template_cuts_is_the_only_thing_above_it()
    {
        File.WriteAllText(Own, File.ReadAllText(Path.Combine(Notes.Shipped, "handover.text.scriban")).Replace("{{ line.text }}", "{{ if line.label != 'acid' }}{{ line.text }}{{ end }}", StringComparison.Ordinal));

        Assert.Equal("acid: Example filter: in acid since 23:04. (#13)", Assert.Single(TemplateTrial.Of(Own, TemplateName.Of(Own)!).LeftOut));
    }

    [Fact]
    public void A_caution_that_the_site_has_not_approved_keeps_its_mark()
    {
        File.WriteAllText(Own, File.ReadAllText(Path.Combine(Notes.Shipped, "handover.text.scriban")).Replace("DRAFT", "", StringComparison.Ordinal));

        Assert.Equal("The cautions are drafts, not approved by the site.", Assert.Single(TemplateTrial.Of(Own, TemplateName.Of(Own)!).LeftOut));
    }

    public static TheoryData<string> ShippedTemplates => [.. Directory.EnumerateFiles(Notes.Shipped, "*.scriban").Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(ShippedTemplates))]
    public void The_shipped_templates_leave_out_nothing(string file)
    {
        var trial = TemplateTrial.Of(Path.Combine(Notes.Shipped, file), TemplateName.Of(file)!);

        Assert.Null(trial.Fault);
        Assert.Empty(trial.LeftOut);
    }

    [Fact]
    public void There_are_three_notes_in_three_formats() => Assert.Equal(9, Directory.GetFiles(Notes.Shipped, "*.scriban").Length);

    private static string Foot(string note) => Bare(note[(note.TrimEnd().LastIndexOf("Drawn by", StringComparison.Ordinal) - 1)..]);

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    private string Own => Path.Combine(_folder, "handover.text.scriban");

    private string Note() => Notes.Write(Notes.With("word"), NoteFormat.Text, _folder);
}
