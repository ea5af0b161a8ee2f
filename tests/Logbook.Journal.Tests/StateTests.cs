using System.Runtime.CompilerServices;
using CsCheck;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Journal.Tests;

public sealed class StateTests : IDisposable
{
    private static readonly DateTimeOffset Eight = Drafts.Morning;

    private readonly InMemoryJournal _journal = new();

    public void Dispose() => _journal.Dispose();

    [Fact]
    public void A_correction_of_one_reading_is_written_in_the_first_form_and_one_of_several_in_its_own()
    {
        var one = Drafts.Of(Correction.Of(1, [Drafts.Read("SL-T1=103", Eight)], "misread", [], []));
        var two = Drafts.Of(Correction.Of(1, [Drafts.Read("SL-T1=103", Eight), Drafts.Read("SL-T2=99", Eight)], "swapped", [], []));

        var (first, second) = (JournalRecord.Seal(one, Head.Empty), JournalRecord.Seal(two, Head.Empty));

        Assert.Contains("\"reading\":{", System.Text.Encoding.UTF8.GetString(first.Bytes.Span), StringComparison.Ordinal);
        Assert.DoesNotContain("\"readings\"", System.Text.Encoding.UTF8.GetString(first.Bytes.Span) + System.Text.Encoding.UTF8.GetString(second.Bytes.Span), StringComparison.Ordinal);
        Assert.DoesNotContain("several", System.Text.Encoding.UTF8.GetString(first.Bytes.Span), StringComparison.Ordinal);
        Assert.DoesNotContain("\"reading\":{", System.Text.Encoding.UTF8.GetString(second.Bytes.Span), StringComparison.Ordinal);
        Assert.Equal(["SL-T1", "SL-T2"], Assert.IsType<Correction>(second.Body).Readings.Select(r => r.Point), StringComparer.Ordinal);
        Assert.Equal("SL-T1", Assert.Single(Assert.IsType<Correction>(first.Body).Readings).Point);
    }

    [Fact]
    public void The_newest_reading_stands_even_when_an_older_one_is_typed_later()
    {
        Append(Drafts.Entry(Eight.AddHours(2), "SL-T1=102"));
        Append(Drafts.Entry(Eight, "SL-T1=99", "SL-T2=80"));

        Assert.Equal((102, 1L), (Latest("SL-T1").Value, Latest("SL-T1").Seq));
        Assert.Equal(80, Latest("sl-t2").Value);
    }

    [Fact]
    public void What_a_late_correction_finds_of_a_point_that_was_read_since_does_not_stand()
    {
        Append(Drafts.Entry(Eight, "SL-T1=102"));
        Append(Drafts.Entry(Eight.AddHours(1), "SL-T2=80"));
        Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=103", Eight), "misread", [], [Drafts.Found("watch", "SL-T2"), Drafts.Found("watch", "SL-T1"), Drafts.Found("watch", "SL-T3")]), Eight.AddHours(3)));

        Assert.Equal(["3.2 watch"], Open("SL-T1"));
        Assert.Empty(Open("SL-T2"));
        Assert.Equal(["3.3 watch"], Open("SL-T3"));
    }

    [Fact]
    public void A_reading_that_was_not_taken_leaves_the_value_before_it()
    {
        Append(Drafts.Entry(Eight, "SL-T1=102"));
        Append(Drafts.Entry(Eight.AddHours(1), "SL-T1=-"));

        Assert.Equal(102, Latest("SL-T1").Value);
    }

    [Fact]
    public void A_derived_value_lands_under_its_point_with_the_time_of_its_entry()
    {
        Append(Drafts.Of(new Entry { Round = "titration", Results = [Drafts.Derived("WL-CE", 82), Drafts.Derived("WL-EA", 90) with { Point = null }] }, Eight));

        var value = Latest("WL-CE");
        Assert.Equal((82, Eight, "titration"), (value.Value, value.At, value.Round));
        Assert.Single(State.Latest);
    }

    [Fact]
    public void Findings_stand_until_the_point_is_judged_again()
    {
        Append(Found(Eight, ["SL-T1=103.4", "SL-T2=80"], Drafts.Found("limit", "SL-T1"), Drafts.Found("step", "SL-T1")));
        Assert.Equal(["1.1 limit", "1.2 step"], Open("SL-T1"));

        Append(Drafts.Entry(Eight.AddHours(1), "SL-T2=81"));
        Assert.Equal(["1.1 limit", "1.2 step"], Open("SL-T1"));

        Append(Drafts.Entry(Eight.AddHours(2), "SL-T1=101"));
        Assert.Empty(State.Findings);
    }

    [Fact]
    public void Findings_about_an_older_value_say_nothing_about_now()
    {
        Append(Drafts.Entry(Eight.AddHours(2), "SL-T1=101"));
        Append(Found(Eight, ["SL-T1=104"], Drafts.Found("limit", "SL-T1"), Drafts.Found("doubt")));

        Assert.Empty(State.Findings);
    }

    [Fact]
    public void A_finding_about_a_point_without_a_value_in_the_entry_joins_the_others_once_for_each_code()
    {
        Append(Found(Eight, ["SL-T1=104"], Drafts.Found("limit", "SL-T1")));
        Append(Found(Eight.AddHours(1), ["SL-T2=80"], Drafts.Found("doubt", "SL-T1"), Drafts.Found("whole line")));
        Append(Found(Eight.AddHours(2), ["SL-T2=81"], Drafts.Found("doubt", "SL-T1")));

        Assert.Equal(["1.1 limit", "3.1 doubt"], Open("SL-T1"));
        Assert.Empty(Open(""));
    }

    [Fact]
    public void A_correction_of_the_newest_value_replaces_it_its_results_and_its_findings()
    {
        Append(Drafts.Of(new Entry
        {
            Round = "hourly",
            Readings = [Drafts.Read("SL-T1=130", Eight), Drafts.Read("SL-T2=80", Eight)],
            Results = [Drafts.Derived("WL-CE", 70), Drafts.Derived("WL-EA", 60)],
            Findings = [Drafts.Found("limit", "SL-T1"), Drafts.Found("low", "WL-CE"), Drafts.Found("watch", "SL-T2")],
        }, Eight));

        Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=103", Eight), "misread", [Drafts.Derived("WL-CE", 82)], [Drafts.Found("watch", "SL-T2")]), Eight.AddHours(3)));

        Assert.Equal((103, 1L, 2L, "hourly"), (Latest("SL-T1").Value, Latest("SL-T1").Seq, Latest("SL-T1").CorrectedBy, Latest("SL-T1").Round));
        Assert.Equal((82, Eight, 2L), (Latest("WL-CE").Value, Latest("WL-CE").At, Latest("WL-CE").CorrectedBy));
        Assert.Null(Latest("WL-EA").Value); // not computed again: it stands no longer
        Assert.Equal((80, null), (Latest("SL-T2").Value, Latest("SL-T2").CorrectedBy));
        Assert.Empty(Open("SL-T1"));
        Assert.Empty(Open("WL-CE"));
        Assert.Equal(["2.1 watch"], Open("SL-T2"));
    }

    [Fact]
    public void A_correction_of_an_older_entry_leaves_the_newest_value_and_its_findings()
    {
        Append(Drafts.Entry(Eight, "SL-T1=130"));
        Append(Found(Eight.AddHours(1), ["SL-T1=104"], Drafts.Found("limit", "SL-T1")));
        Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=100", Eight), "misread", [], [Drafts.Found("step", "SL-T1")]), Eight.AddHours(2)));

        Assert.Equal((104, 2L), (Latest("SL-T1").Value, Latest("SL-T1").Seq));
        Assert.Equal(["2.1 limit"], Open("SL-T1"));
    }

    [Fact]
    public void Equipment_runs_until_somebody_says_otherwise()
    {
        Assert.Equal("running", State.StateOf("slaker"));

        Append(Drafts.Of(new EquipmentStateChanged("slaker", "acid", Eight, "scale")));

        Assert.Equal("acid", State.StateOf("SLAKER"));
        Assert.Equal("running", State.StateOf(null));
    }

    [Fact]
    public void A_carried_item_is_open_from_its_record_to_the_one_that_closes_it()
    {
        Append(Drafts.Of(new Carry("permit", "slaker", "two inside", null, "op1", new Dictionary<string, string>(StringComparer.Ordinal) { ["number"] = "7" })));
        Append(Drafts.Of(new Carry("action", "slaker", "tighten the gland", null, null, new Dictionary<string, string>(StringComparer.Ordinal))));
        Append(Drafts.Of(new CarryClosed(2, "done")));

        var open = Assert.Single(State.Carried);
        Assert.Equal((1L, "7", true), (open.Id, open.Fields["number"], open.IsHazard));
    }

    [Fact]
    public void The_site_in_force_is_the_one_adopted_last_and_none_when_its_files_cannot_be_read_today()
    {
        Append(Drafts.Of(new SiteAdopted(StarterSite(), "first")));
        Assert.NotNull(State.Site);
        Assert.Equal(StarterSite()[SiteFiles.SiteToml], State.Files!.Texts[SiteFiles.SiteToml]);

        Append(Drafts.Of(new SiteAdopted(new Dictionary<string, string>(StringComparer.Ordinal) { [SiteFiles.SiteToml] = "[" }, "broken")));
        Assert.Null(State.Site);
        Assert.Equal("[", State.Files!.Texts[SiteFiles.SiteToml]);
    }

    [Fact]
    public void The_state_does_not_depend_on_where_the_replay_is_cut()
    {
        Gen.Select(Drafts.Any.Array[2, 12], Gen.Int[0, 12]).Sample((drafts, cut) =>
        {
            using var journal = new InMemoryJournal();
            foreach (var draft in drafts)
                journal.Append(draft);

            var whole = Fold(State.Empty, journal.Read());
            var first = Fold(State.Empty, journal.Read().Take(cut));
            var both = Fold(first, journal.Read(first.Head.Seq + 1));
            Assert.Equal(journal.Head, both.Head);
            Assert.Equal(whole.Latest.OrderBy(p => p.Key, StringComparer.Ordinal), both.Latest.OrderBy(p => p.Key, StringComparer.Ordinal));
            Assert.Equal(whole.Findings.Keys.Order(StringComparer.Ordinal), both.Findings.Keys.Order(StringComparer.Ordinal), StringComparer.Ordinal);
            Assert.Equal(whole.Carried.Select(item => item.Id), both.Carried.Select(item => item.Id));
        });
    }

    private State State => Fold(State.Empty, _journal.Read());

    private static State Fold(State from, IEnumerable<JournalRecord> records) => records.Aggregate(from, (state, record) => state.Apply(record));

    private void Append(RecordDraft draft) => _journal.Append(draft);

    private SeriesValue Latest(string tag) => State.Latest[tag];

    private string[] Open(string tag) => State.Findings.TryGetValue(tag, out var open) ? [.. open.Select(f => $"{f.Seq}.{f.Number} {f.Finding.Code}")] : [];

    private static RecordDraft Found(DateTimeOffset at, string[] readings, params Finding[] findings) =>
        Drafts.Of(new Entry { Readings = [.. readings.Select(text => Drafts.Read(text, at))], Findings = findings }, at);

    private static Dictionary<string, string> StarterSite([CallerFilePath] string here = "")
    {
        var folder = Path.Combine(Path.GetDirectoryName(here)!, "../../templates/site");
        string[] names = [SiteFiles.SiteToml, SiteFiles.PointsCsv, SiteFiles.CautionsToml];
        return names.ToDictionary(name => name, name => File.ReadAllText(Path.Combine(folder, name)), StringComparer.Ordinal);
    }
}
