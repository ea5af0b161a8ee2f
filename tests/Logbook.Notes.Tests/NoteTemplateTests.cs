namespace Logbook.Notes.Tests;

public sealed class NoteTemplateTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("logbook-notes-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_first_folder_that_has_the_file_wins()
    {
        File.WriteAllText(Own, "Our own note of {{ note.shift }}");

        Assert.Equal("Our own note of 2026-11-24-N-C", Note());
        Assert.StartsWith("WORD\n", Notes.Write(Notes.With("word"), NoteFormat.Text, Path.Combine(_folder, "missing")), StringComparison.Ordinal);
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
        var joined = string.Concat(note.Where(c => !char.IsWhiteSpace(c)));
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

        Assert.Contains("the shipped template was used", Note().ReplaceLineEndings(" ").Replace("             ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Values_are_escaped_whatever_the_template_does_with_them()
    {
        File.WriteAllText(Path.Combine(_folder, "handover.html.scriban"), "<p>{{ note.site + '<b>' }}{{ note.site | string.upcase }}</p>");

        Assert.Equal("<p>&lt;i&gt;&lt;b&gt;&lt;I&gt;</p>", Notes.Write(Notes.With("<i>"), NoteFormat.Html, _folder));
    }

    private string Own => Path.Combine(_folder, "handover.text.scriban");

    private string Note() => Notes.Write(Notes.With("word"), NoteFormat.Text, _folder);
}
