using System.Text.Json;
using CsCheck;
using Logbook.Testing;

namespace Logbook.Journal.Tests;

/// <summary>A state that is kept and read again is the state that was kept.</summary>
public sealed class StateFormTests
{
    [Fact]
    public void A_replay_that_goes_on_from_a_kept_state_ends_where_a_whole_replay_ends()
    {
        Gen.Select(Drafts.Any.Array[2, 12], Gen.Int[1, 11]).Sample(
            (drafts, cut) =>
            {
                var records = InJournal(drafts);
                var kept = StateForm.Write(records.Take(cut).Aggregate(State.Empty, (state, record) => state.Apply(record)));

                var onwards = records.Skip(cut).Aggregate(StateForm.Read(kept)!, (state, record) => state.Apply(record));

                var whole = records.Aggregate(State.Empty, (state, record) => state.Apply(record));
                Assert.Equal(JsonDocument.Parse(StateForm.Write(whole)).RootElement.GetRawText(), JsonDocument.Parse(StateForm.Write(onwards)).RootElement.GetRawText());
            },
            iter: 200);
    }

    [Fact]
    public void One_state_has_one_form_in_whatever_order_it_came_to_know_things()
    {
        static State Open(IReadOnlyDictionary<string, string> fields) =>
            InJournal([Drafts.Of(new Carry("permit", "slaker", "inside", null, null, fields))]).Aggregate(State.Empty, (s, record) => s.Apply(record));
        var state = Open(new Dictionary<string, string>(StringComparer.Ordinal) { ["number"] = "4417", ["inside"] = "1" });
        var item = state.Carried[0];
        var other = state with { Carried = [item with { Fields = new Dictionary<string, string>(StringComparer.Ordinal) { ["inside"] = "1", ["number"] = "4417" } }] };

        Assert.Equal(StateForm.Write(state), StateForm.Write(other));
    }

    [Fact]
    public void Whatever_a_state_holds_is_kept()
    {
        // The site follows from the files; everything else that can be set has a place of its own.
        var state = InJournal([Drafts.Of(new SiteAdopted(Some.Files.Texts, "first"))]).Aggregate(State.Empty, (s, record) => s.Apply(record));
        var members = typeof(State).GetProperties().Where(p => p.CanWrite && p.Name != nameof(State.Site) && p.GetValue(state) is not null)
            .Select(p => JsonNamingPolicy.SnakeCaseLower.ConvertName(p.Name));

        using var kept = JsonDocument.Parse(StateForm.Write(state));

        Assert.Equal(members.Order(StringComparer.Ordinal), kept.RootElement.EnumerateObject().Select(m => m.Name).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void The_site_in_force_and_tags_in_any_case_are_found_again()
    {
        var state = InJournal([Drafts.Of(new SiteAdopted(Some.Files.Texts, "first")), Drafts.Entry(Drafts.Morning, "SL-T1=101")])
            .Aggregate(State.Empty, (s, record) => s.Apply(record));

        var read = StateForm.Read(StateForm.Write(state))!;

        Assert.Equal(Some.Site.Id, read.Site!.Id);
        Assert.Equal(state.Latest["SL-T1"], read.Latest["sl-t1"]);
    }

    [Fact]
    public void What_is_no_state_is_not_read_as_one()
    {
        Assert.Null(StateForm.Read("{}"u8));
        Assert.Null(StateForm.Read("[1]"u8));
        Assert.Null(StateForm.Read(StateForm.Write(State.Empty).AsSpan()[..^1]));
    }

    private static List<JournalRecord> InJournal(IEnumerable<RecordDraft> drafts)
    {
        using var journal = new InMemoryJournal();
        return [.. drafts.Select(journal.Append)];
    }
}
