using System.Text;
using CsCheck;

namespace Logbook.Journal.Tests;

public sealed class JournalRecordTests
{
    [Fact]
    public void A_record_has_exactly_these_bytes()
    {
        var at = new DateTimeOffset(2026, 10, 31, 20, 5, 7, 123, TimeSpan.FromHours(-4));
        var reading = new Reading { Point = "SL-T1", Typed = "103.40", Value = 103.4, Unit = "degC", At = at };
        var entry = new Entry
        {
            Round = "hourly",
            WalkStart = at,
            Readings = [reading],
            Results = [new("wl", "causticity", "WL-CE", 0.1 + 0.2, "%", 1e-7, "burette", "Causticizing 0.1.0")],
            Findings = [new(Level.Urgent, "limit.urgent-high", "SL-T1", "too hot", ["limit 103"])],
        };

        var record = JournalRecord.Seal(new(entry, "line-1", at, at.AddMinutes(1), "2026-10-31-N-B", "op1", "host:tty1"), Head.Empty);

        const string expected = """
            {"at":"2026-11-01T00:05:07.123Z","body":{
            "findings":[{"code":"limit.urgent-high","evidence":["limit 103"],"level":"urgent","point":"SL-T1","text":"too hot"}],
            "readings":[{"at":"2026-10-31T20:05:07.123-04:00","point":"SL-T1","typed":"103.40","unit":"degC","value":"103.4"}],
            "results":[{"by":"Causticizing 0.1.0","covers":"burette","name":"wl","output":"causticity","point":"WL-CE",
            "u":"1E-07","unit":"%","value":"0.30000000000000004"}],"round":"hourly","walk_start":"2026-10-31T20:05:07.123-04:00"},
            "by":"op1","chain":"line-1","entered":"2026-11-01T00:06:07.123Z","kind":"entry","offset":"-04:00",
            "prev":"0000000000000000000000000000000000000000000000000000000000000000",
            "seq":1,"shift":"2026-10-31-N-B","terminal":"host:tty1","v":1}
            """;
        Assert.Equal(expected.ReplaceLineEndings(""), Encoding.UTF8.GetString(record.Bytes.Span));
    }

    [Fact]
    public void A_sealed_record_reads_back_and_seals_to_the_same_bytes()
    {
        Drafts.Any.Sample(draft =>
        {
            var head = new Head(41, new string('a', 64));
            var record = JournalRecord.Seal(draft, head);

            var read = JournalRecord.Parse(record.Bytes);
            Assert.IsNotType<UnknownBody>(read.Body);
            Assert.Equal((42, draft.At, draft.At.Offset, draft.Entered), (read.Seq, read.At, read.At.Offset, read.Entered));
            var again = JournalRecord.Seal(new(read.Body, read.Chain, read.At, read.Entered, read.Shift, read.By, read.Terminal), head);
            Assert.Equal(record.Bytes.ToArray(), again.Bytes.ToArray());
        });
    }

    [Fact]
    public void Numbers_come_back_to_the_last_bit()
    {
        Gen.Double.Where(double.IsFinite).Sample(value =>
        {
            var entry = new Entry { Results = [Drafts.Derived("WL-CE", value)] };
            var read = (Entry)JournalRecord.Seal(Drafts.Of(entry), Head.Empty).Body;
            Assert.Equal(BitConverter.DoubleToInt64Bits(value), BitConverter.DoubleToInt64Bits(read.Results[0].Value));
        });
    }

    [Theory]
    [InlineData(null)] // as earlier versions wrote it
    [InlineData(new[] { 1, 0.5, 2 })]
    public void A_fit_is_read_whether_or_not_it_knows_how_far_a_suspicion_reaches(double[]? chance)
    {
        var at = new DateTimeOffset(2026, 10, 31, 8, 0, 0, TimeSpan.Zero);
        var fit = new FitAdopted("a line", at, at, 200, 0, 0.02, [10, 11, 12], [], [], [new(0, [0], [1], 1, 8, null) { Chance = chance }], [], [], [], "the first fit");

        var record = JournalRecord.Seal(Drafts.Of(fit), Head.Empty);

        Assert.Equal(chance is not null, Encoding.UTF8.GetString(record.Bytes.Span).Contains("chance", StringComparison.Ordinal));
        Assert.Equal(chance, Assert.IsType<FitAdopted>(JournalRecord.Parse(record.Bytes).Body).Hypotheses[0].Chance);
    }

    [Fact]
    public void A_number_that_is_not_finite_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => JournalRecord.Seal(Drafts.Of(new Entry { Results = [Drafts.Derived("WL-CE", double.NaN)] }), Head.Empty));
    }

    [Theory]
    [InlineData("\"kind\":\"remark\"", "\"kind\":\"weighing\"", "weighing")] // a kind of a later version
    [InlineData("\"v\":1", "\"v\":2", "remark")] // a form of a later version
    [InlineData("\"text\":\"hello\"", "\"texts\":[\"hello\"]", "remark")] // a form that lacks what ours needs
    public void What_this_version_does_not_know_is_kept_with_its_bytes(string ours, string theirs, string kind)
    {
        var known = Encoding.UTF8.GetString(JournalRecord.Seal(Drafts.Of(new Remark("hello", null, null)), Head.Empty).Bytes.Span);
        var bytes = Encoding.UTF8.GetBytes(known.Replace(ours, theirs, StringComparison.Ordinal));

        var record = JournalRecord.Parse(bytes);

        var body = Assert.IsType<UnknownBody>(record.Body);
        Assert.Equal(kind, body.Kind);
        Assert.Contains("hello", body.Raw.GetRawText(), StringComparison.Ordinal);
        Assert.Equal(bytes, record.Bytes.ToArray());
    }

    [Fact]
    public void A_member_that_a_later_version_added_does_not_hide_the_rest()
    {
        var known = Encoding.UTF8.GetString(JournalRecord.Seal(Drafts.Of(new Remark("hello", null, null)), Head.Empty).Bytes.Span);

        var record = JournalRecord.Parse(Encoding.UTF8.GetBytes(known.Replace("\"text\":", "\"mood\":\"calm\",\"text\":", StringComparison.Ordinal)));

        Assert.Equal("hello", Assert.IsType<Remark>(record.Body).Text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("{\"seq\":1,\"seq\":2}")]
    public void Bytes_that_are_no_record_are_refused_in_one_line(string json)
    {
        var refused = Assert.Throws<FormatException>(() => JournalRecord.Parse(Encoding.UTF8.GetBytes(json)));
        Assert.DoesNotContain('\n', refused.Message);
    }

    [Fact]
    public void A_time_is_written_in_the_one_form_of_iso_8601_and_read_again()
    {
        Gen.Select(Gen.Long[-60_000_000_000_000, 250_000_000_000_000], Gen.Int[-14 * 60, 14 * 60]).Sample((ms, minutes) =>
        {
            var at = DateTimeOffset.FromUnixTimeMilliseconds(ms).ToOffset(TimeSpan.FromMinutes(minutes));
            var record = JournalRecord.Seal(Drafts.Of(new Entry { Readings = [Drafts.Read("SL-T1=1", at)] }), Head.Empty);

            Assert.Contains($"\"at\":\"{at.ToString("yyyy-MM-dd'T'HH:mm:ss.fffzzz", System.Globalization.CultureInfo.InvariantCulture)}\",\"point\"", Encoding.UTF8.GetString(record.Bytes.Span), StringComparison.Ordinal);
            Assert.True(((Entry)record.Body).Readings[0].At.EqualsExact(at));
        });
    }

    [Theory]
    [InlineData("2026-10-31T20:05:07.12345678Z")]
    [InlineData("2026-10-31T20:05:07.123456-04")]
    [InlineData("2026-10-31 20:05:07.123-04:00")]
    [InlineData("2026-13-31T20:05:07.123-04:00")]
    [InlineData("2026-10-31T25:05:07.123-04:00")]
    [InlineData("2026-10-31T20:05:07.123")]
    public void A_time_in_another_form_is_not_taken_for_one(string text)
    {
        var known = Encoding.UTF8.GetString(JournalRecord.Seal(Drafts.Entry(Drafts.Morning, "SL-T1=1"), Head.Empty).Bytes.Span);

        var record = JournalRecord.Parse(Encoding.UTF8.GetBytes(known.Replace("2026-10-31T08:00:00.000-04:00", text, StringComparison.Ordinal)));

        Assert.IsType<UnknownBody>(record.Body);
    }

    // A reading and a result with every member that they may have, as they lie on the disk.
    private const string Full = "{\"at\":\"2026-10-31T08:00:00.000-04:00\",\"point\":\"SL-T1\",\"remark\":\"r\",\"retyped\":\"140\",\"second\":\"104.1\",\"typed\":\"104\",\"unit\":\"degC\",\"value\":\"104\",\"why\":\"stands\"}";
    private const string Computed = "{\"by\":\"Causticizing 0.1.0\",\"covers\":\"burette\",\"name\":\"wl\",\"output\":\"causticity\",\"point\":\"WL-CE\",\"u\":\"0.3\",\"unit\":\"%\",\"value\":\"80.5\"}";

    private static JournalRecord With(string reading, string result)
    {
        var entry = new Entry { Readings = [Drafts.Read("SL-T1=1", Drafts.Morning)], Results = [Drafts.Derived("WL-CE", 1)] };
        var known = Encoding.UTF8.GetString(JournalRecord.Seal(Drafts.Of(entry), Head.Empty).Bytes.Span);
        string Only(string list) => known.Split($"\"{list}\":[")[1].Split(']')[0];
        return JournalRecord.Parse(Encoding.UTF8.GetBytes(known.Replace(Only("readings"), reading, StringComparison.Ordinal).Replace(Only("results"), result, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("{", "{\"mood\":[{\"point\":\"other\"}],")] // of a later version
    [InlineData("\"unit\"", "\"\\u0075nit\"")] // another form of the same name
    public void Every_member_of_a_reading_and_of_a_result_comes_back_and_what_is_not_known_is_passed_over(string ours, string theirs)
    {
        var entry = Assert.IsType<Entry>(With(Full.Replace(ours, theirs, StringComparison.Ordinal), Computed.Replace(ours, theirs, StringComparison.Ordinal)).Body);

        Assert.Equal(
            new Reading { Point = "SL-T1", Typed = "104", Value = 104, Unit = "degC", At = Drafts.Morning, Why = "stands", Second = "104.1", Retyped = "140", Remark = "r" },
            Assert.Single(entry.Readings));
        Assert.Equal(new Result("wl", "causticity", "WL-CE", 80.5, "%", 0.3, "burette", "Causticizing 0.1.0"), Assert.Single(entry.Results));
        Assert.Contains(Full, Encoding.UTF8.GetString(JournalRecord.Seal(Drafts.Of(entry), Head.Empty).Bytes.Span), StringComparison.Ordinal);
        Assert.Contains(Computed, Encoding.UTF8.GetString(JournalRecord.Seal(Drafts.Of(entry), Head.Empty).Bytes.Span), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"point\":\"SL-T1\",", "")]
    [InlineData("\"point\":\"SL-T1\"", "\"point\":null")]
    [InlineData("\"point\":\"SL-T1\"", "\"point\":7")]
    [InlineData("\"at\":\"2026-10-31T08:00:00.000-04:00\",", "")]
    [InlineData("\"remark\":\"r\"", "\"remark\":5")]
    [InlineData("\"unit\":\"degC\",", "")]
    [InlineData("\"value\":\"104\"", "\"value\":104")]
    [InlineData("\"value\":\"104\"", "\"value\":\"NaN\"")]
    [InlineData("\"value\":\"104\"", "\"value\":\"1e999\"")]
    [InlineData("\"by\":\"Causticizing 0.1.0\",", "")]
    [InlineData("\"name\":\"wl\"", "\"name\":null")]
    [InlineData("\"u\":\"0.3\"", "\"u\":0.3")]
    [InlineData(",\"value\":\"80.5\"", "")]
    [InlineData("\"value\":\"80.5\"", "\"value\":null")]
    [InlineData(Full, "[]")]
    [InlineData(Computed, "\"none\"")]
    public void A_reading_or_a_result_that_is_not_whole_is_not_taken_for_one(string ours, string theirs)
    {
        Assert.Contains(ours, Full + Computed, StringComparison.Ordinal);

        Assert.IsType<UnknownBody>(With(Full.Replace(ours, theirs, StringComparison.Ordinal), Computed.Replace(ours, theirs, StringComparison.Ordinal)).Body);
    }

    [Theory]
    [InlineData("\"point\":\"SL-T1\"", "\"point\":\"SL-T1\",\"point\":\"SL-T2\"")]
    [InlineData("\"u\":\"0.3\"", "\"u\":\"0.3\",\"u\":\"0.3\"")]
    public void A_member_that_stands_twice_makes_it_no_record(string ours, string theirs) =>
        Assert.Throws<FormatException>(() => With(Full.Replace(ours, theirs, StringComparison.Ordinal), Computed.Replace(ours, theirs, StringComparison.Ordinal)));
}
