using CsCheck;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

/// <summary>One mistake planted in the starter site is told at its line and column, and drags at most two others along.</summary>
public sealed class BrokenSiteTests
{
    private const string Toml = SiteFiles.SiteToml, Csv = SiteFiles.PointsCsv, Cautions = SiteFiles.CautionsToml;

    /// <summary>File, what stands there, what is put there ('@' before the place of the mistake), and the line that is told.</summary>
    public static readonly TheoryData<string, string, string, string> Planted = new()
    {
        // the site
        { Toml, "id = \"line-1\" ", "id = @\"line 1\" ", "id 'line 1' has other signs; letters, digits and '-'" },
        { Toml, "altitude_m = 12\n", "altitude_m = @\"12 m\"\n", "'12 m' is no number; accepted: digits with at most one decimal point or comma, as in 103.4" },
        { Toml, "altitude_m = 12\n", "altitude_m = @true\n", "altitude_m has a value of another type; accepted: a number" },
        { Toml, "altitude_m = 12\n", "@altitud_m = 12\n", "[site] knows no key 'altitud_m'; nearest: altitude_m" },
        { Toml, "\"America/New_York\"", "@\"America/New_Yorc\"", "time zone 'America/New_Yorc' is unknown here; an IANA name as in America/New_York; nearest: America/New_York" },
        { Toml, "\"America/New_York\"", "@\"Eastern Standard Time\"", "time zone 'Eastern Standard Time' is unknown here; an IANA name as in America/New_York" },
        { Toml, "[crews]", "[@crew]", "site.toml knows no key 'crew'; nearest: crews" },

        // shifts, crews, people, equipment, reasons
        { Toml, "starts = \"19:00\"", "starts = @\"7 pm\"", "starts is no time of day; as in \"07:00\"" },
        { Toml, "starts = \"19:00\"", "starts = @\"07:00\"", "two shifts start at 07:00" },
        { Toml, "pattern = \"DDNNoooo\"", "pattern = @\"DDNooooo\"", "on 2026-01-02 shift N has no crew; exactly one crew on each shift of each day" },
        { Toml, "anchor = 2026-01-01", "anchor = @\"2026-01-01\"", "anchor has a value of another type; accepted: a date as in 2026-01-31, without marks" },
        { Toml, "anchor = 2026-01-01", "anchor = @9999-12-31", "anchor is out of range; 1970 to 2199" },
        { Toml, "offset_days = 2", "offset_days = @99999999999", "offset_days is out of range; 0 to 366" },
        { Toml, "altitude_m = 12\n", "altitude_m = @nan\n", "altitude_m has a value of another type; accepted: a number" },
        { Toml, "# [handover]\n# keep_clear = \"30m\"", "[handover]\nkeep_clear = @\"5h\"", "keep_clear leaves no time for rounds; 0m to 2h" },
        { Toml, "role = \"supervisor\"", "role = @\"boss\"", "role 'boss' is unknown; accepted: operator, supervisor, engineer" },
        { Toml, "crew = \"D\"", "crew = @\"E\"", "crew 'E' is unknown; accepted: A, B, C, D" },
        { Toml, "code = \"op2\"", "code = @\"OP1\"", "[[person]] code 'OP1' comes twice; each has its own, capitals or not" },
        { Toml, "[[person]]\ncode = \"op2\"", "@[[person]]\ncod = \"op2\"", "[[person]] has no code; code = \"...\" is needed" },
        { Toml, "name = \"Area sump\"", "name = @\" \"", "name is empty; text is needed" },
        { Toml, "area = \"dregs\"", "area = @\"dreg\"", "area 'dreg' is unknown; nearest: dregs" },
        { Toml, "not_yet = [\"critical step running\"", "not_yet = [@1, \"critical step running\"", "not_yet holds something that is no text; text in \"...\"" },

        { Toml, "[reasons]\n", "[policy]\npurpose = \"p\"\nreaders = [@\"supp1\"]\nretention = \"r\"\nconsultation = \"c\"\n\n[reasons]\n", "reader 'supp1' is nobody of this site; nearest: sup1" },
        { Toml, "[reasons]\n", "[@policy]\npurpose = \"p\"\nretention = \"r\"\nconsultation = \"c\"\n\n[reasons]\n", "[policy] names no readers; codes of people, as in readers = [\"sup1\"]" },

        // rounds
        { Toml, "every = \"1h\"", "every = @\"1 hour\"", "'1 hour' is no length of time; accepted: days, hours, minutes, seconds, as in 15m, 1h30m, 2d" },
        { Toml, "every = \"1h\"", "every = @\"1m\"", "every is too short or too long for a round; 5m to 24h; per = \"day\" | \"week\" for less often" },
        { Toml, "every = \"1h\"", "per = @\"day\"\nevery = \"1h\"", "[[round]] has every and per; one of every = \"1h\", at = [\"08:00\"], per = \"shift\" | \"day\" | \"week\"" },
        { Toml, "\"16:00\", \"20:00\"", "\"16:00\", @\"25:00\"", "'25:00' is no time of day; as in \"08:00\"" },
        { Toml, "per = \"shift\"", "per = @\"month\"", "per 'month' is unknown; accepted: shift, day, week" },
        { Toml, "\"GC-T2\", \"SL-F1\"", "@\"GC-T3\", \"SL-F1\"", "point 'GC-T3' is unknown; nearest: GC-T1, GC-T2, GC-TW1" },
        { Toml, "\"GC-T2\", \"SL-F1\"", "\"GC-T2\", @\"SL-T1\", \"SL-F1\"", "point 'SL-T1' comes twice in the round" },
        { Toml, "\"GC-T2\", \"SL-F1\"", "\"GC-T2\", @\"SL-MARGIN\", \"SL-F1\"", "point 'SL-MARGIN' is derived; a read point is needed" },
        { Toml, "place = \"field\"", "place = @\"outside\"", "place 'outside' is unknown; accepted: field, panel" },

        // calculations
        { Toml, "inputs.flow = \"SL-F1\"", "inputs.flow = @\"SL-F9\"", "point 'SL-F9' is unknown; nearest: SL-F1, SL-FS, SL-BP" },
        { Toml, "inputs.flow = \"SL-F1\"", "inputs.flow = @300", "input flow is neither a tag nor a constant; \"TAG\", or { value = \"NUMBER UNIT\", u = \"...\", source = \"...\" }" },
        { Toml, "inputs.flow = \"SL-F1\"", "inputs.flow = @\"300 m3/h\"", "'300 m3/h' is no tag; a constant is { value = \"300 m3/h\", u = \"...\", source = \"...\" }" },
        { Toml, "value = \"12 m\"", "value = @\"12\"", "constant '12' of altitude has no unit; a number and its unit as in \"0.500 mol/L\"; a plain ratio has the unit 1" },
        { Toml, "value = \"26 g/L Na2O\"", "value = @\"26 g/L Na\"", "unit 'g/L Na' is unknown; alkali needs its basis: g/L Na2O, g/L NaOH, lb/ft3 Na2O, lb/ft3 NaOH, mol/L NaOH" },
        { Toml, "{ value = \"12 m\", u = \"1\",", "@{ value = \"12 m\",", "constant of altitude has no u; its standard uncertainty, in its unit or as in \"2%\"; \"exact\" for a choice or an aim" },
        { Toml, "u = \"0.15\"", "u = @\"small\"", "u 'small' cannot be read; a number above 0 in the unit, or a share as in 2%" },
        { Toml, "u = \"0.15\"", "u = @-1", "u is not above 0; a number above 0 in the unit, or a share as in \"2%\"" },
        { Toml, "outputs.causticity = \"GL-CE\"", "outputs.causticity = @\"WL-CE\"", "point 'WL-CE' is fed by 'white liquor' already; each derived point has one source" },
        { Toml, "outputs.causticity = \"GL-CE\"", "outputs.causticity = @\"GL-A\"", "point 'GL-A' is read; a derived point is needed" },
        { Toml, "name = \"green liquor\"", "name = @\"white liquor\"", "[[calculation]] name 'white liquor' comes twice; each has its own, capitals or not" },
        { Toml, "outputs.rate = \"CL-GR\"", "outputs.rate = \"CL-GR\"\nlag.lim = @\"2h\"", "lag of 'lim', which is no input here; nearest: lime" },
        { Toml, "outputs.rate = \"CL-GR\"", "outputs.rate = \"CL-GR\"\nmoves.rate = [@\"CL-X\"]", "point 'CL-X' is unknown; nearest: CL-F, CL-G, CL-I" },
        { Toml, "outputs.rate = \"CL-GR\"", "outputs.rate = \"CL-GR\"\nmethod_u.rate = @\"0%\"", "u '0%' cannot be read; a number above 0 in the unit, or a share as in 2%" },

        // points
        { Csv, "DR-TQ,Torque", "@DR-N,Torque", "tag 'DR-N' comes twice; each point has a tag of its own, capitals or not" },
        { Csv, ",green-liquor-tank,%,", ",@green-liquor-tnk,%,", "area 'green-liquor-tnk' is unknown; nearest: green-liquor-tank, green-liquor-filter" },
        { Csv, ",m3/h,read,0,1,1.5%,0,600,", ",@m3/hr,read,0,1,1.5%,0,600,", "unit 'm3/hr' is unknown; accepted of that kind: m3/h, L/min, L/s, L/h, m3/d, gpm" },
        { Csv, "Solids of the filter's dregs concentrate,green-liquor-filter,g/L", "TTA of the filter's dregs concentrate,green-liquor-filter,@g/L", "unit 'g/L' does not say the basis of the alkali; accepted: g/L Na2O, g/L NaOH, lb/ft3 Na2O, lb/ft3 NaOH, mol/L NaOH; or 'as the compound' in the description" },
        { Csv, "SL-T1,Slaker temperature,slaker,degC,read,", "SL-T1,Slaker temperature,slaker,degC,@reed,", "kind 'reed' is unknown; nearest: read" },
        { Csv, ",950,1300,,1115,1145,1155,15", ",950,1300,,1115,@1105,1155,15", "watch_high 1105 is not above watch_low 1115; lowest < urgent_low < watch_low < watch_high < urgent_high < highest" },
        { Csv, ",950,1300,,1115,1145,1155,15", ",950,@1300,,1115,1145,1355,15", "highest 1300 is not above urgent_high 1355; lowest < urgent_low < watch_low < watch_high < urgent_high < highest" },
        { Csv, ",950,1300,,1115,1145,1155,15", ",950,1300,,1115,@1145x,1155,15", "watch_high: '1145x' is no number; accepted: digits with at most one decimal point or comma, as in 103.4" },
        { Csv, ",950,1300,,1115,1145,1155,15", ",950,1300,,1115,1145,1155,@0", "step 0 is not above 0; a number above 0, or empty" },
        { Csv, ",88,97,100,6,,raw-gl-tank", ",88,97,100,6,@soon,raw-gl-tank", "'soon' is no length of time; accepted: days, hours, minutes, seconds, as in 15m, 1h30m, 2d" },
        { Csv, ",88,97,100,6,,raw-gl-tank", ",88,97,100,6,,@raw-gl-tnk", "equipment 'raw-gl-tnk' is unknown; nearest: raw-gl-tank" },
        { Csv, ",88,97,100,6,,raw-gl-tank,,,,yes", ",88,97,100,6,,raw-gl-tank,,,,@ja", "always 'ja' is unknown; accepted: yes, no" },
        { Csv, "kiln;bought!note;mixed!note", "@kiln;bought!bad;mixed!note", "choice 2 'bought!bad' cannot be read; at most nine, each TEXT or TEXT!note, TEXT!watch, TEXT!urgent" },
        { Csv, "Margin of the slaker to boiling,slaker,K,derived,1,,,", "Margin of the slaker to boiling,slaker,K,derived,1,,@0.5,", "a derived point has no u of its own; empty: it follows from the inputs" },
        { Csv, "RG-F,Green", "@RG-F,,Green", "the row has 22 fields, the first line names 21 columns; every row has a field for each column, empty or not" },

        // cautions
        { Cautions, "trigger = \"always\"", "trigger = @\"sometimes\"", "trigger 'sometimes' is unknown; accepted: always, state:STATE, carry:KIND, carry:KIND@AREA, limit:TAG, sample:NAME, area:AREA" },
        { Cautions, "\"limit:LB-N\"", "@\"limit:LB-M\"", "point 'LB-M' is unknown; nearest: LB-N, LM-L, LM-T" },
        { Cautions, "\"state:washing\"", "@\"state:wash\"", "state 'wash' is unknown; nearest: washing" },
        { Cautions, "\"carry:isolation\"", "@\"carry:lock\"", "carried kind 'lock' is unknown; accepted: action, isolation, permit, bypass, temporary-change, out-of-service, safety-equipment, wash, transfer, delivery, sample, injury, release" },
        { Cautions, "ppe = \"Own lock and tag.\"", "@pp = \"Own lock and tag.\"", "[[caution]] knows no key 'pp'; nearest: ppe" },
    };

    [Theory]
    [MemberData(nameof(Planted))]
    public void A_planted_mistake_is_told_at_its_place(string file, string old, string planted, string told)
    {
        var files = StarterSite.With(file, old, planted.Replace("@", "", StringComparison.Ordinal));
        var before = StarterSite.Files.Texts[file].IndexOf(old, StringComparison.Ordinal) + planted.IndexOf('@', StringComparison.Ordinal);
        var upToIt = files.Texts[file][..before].Split('\n');

        var mistakes = SiteReader.Read(files).Mistakes;

        var place = $"{file}:{upToIt.Length}:{upToIt[^1].Length + 1}: ";
        Assert.True(mistakes.Any(m => m.ToString() == place + told), $"expected {place}{told}\nbut was\n{string.Join('\n', mistakes)}");
        Assert.True(mistakes.Count <= 3, $"one mistake was told as\n{string.Join('\n', mistakes)}");
    }

    [Fact]
    public void Many_mistakes_are_told_at_once_in_the_order_of_the_files()
    {
        // One of each file and section; none touches another's text.
        (string File, string Old, string New, string Told)[] planted =
        [
            (Toml, "altitude_m = 12\n", "altitude = 12\n", "knows no key 'altitude'"),
            (Toml, "role = \"supervisor\"", "role = \"boss\"", "role 'boss'"),
            (Toml, "every = \"1h\"", "every = \"soon\"", "'soon' is no length of time"),
            (Toml, "\"GC-T2\", \"SL-F1\"", "\"GC-T3\", \"SL-F1\"", "point 'GC-T3'"),
            (Toml, "area = \"dregs\"", "area = \"dreg\"", "area 'dreg'"),
            (Toml, "inputs.flow = \"SL-F1\"", "inputs.flow = \"SL-F9\"", "point 'SL-F9'"),
            (Toml, "value = \"12 m\"", "value = \"12\"", "constant '12'"),
            (Csv, "DR-TQ,Torque", "DR-N,Torque", "tag 'DR-N' comes twice"),
            (Csv, ",green-liquor-tank,%,", ",green-liquor-tnk,%,", "area 'green-liquor-tnk'"),
            (Csv, "kiln;bought!note;mixed!note", "kiln;bought!bad;mixed!note", "choice 2"),
            (Cautions, "trigger = \"always\"", "trigger = \"sometimes\"", "trigger 'sometimes'"),
        ];
        var files = planted.Aggregate(StarterSite.Files, (f, p) => StarterSite.WithText(f, p.File, f.Texts[p.File].Replace(p.Old, p.New, StringComparison.Ordinal)));

        var read = SiteReader.Read(files);

        Assert.Null(read.Value);
        Assert.All(planted, p => Assert.Contains(read.Mistakes, m => m.Where.File == p.File && m.ToString().Contains(p.Told, StringComparison.Ordinal)));
        var places = read.Mistakes.Select(m => (Array.IndexOf([Toml, Csv, Cautions], m.Where.File), m.Where.Line)).ToList();
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void A_balance_over_known_points_is_read()
    {
        var files = Append("[[balance]]\nname = \"soda\"\nterms = \"1*SL-F1*RG-D - 0,98*WF-F + RG-F\"\nequals = \"0\"\nu = 3\n");

        var balance = Assert.Single(SiteReader.Read(files).Value!.Balances);

        Assert.Equal([1, -0.98, 1], balance.Terms.Select(t => t.Factor));
        Assert.Equal("SL-F1*RG-D|WF-F|RG-F", string.Join('|', balance.Terms.Select(t => string.Join('*', t.Tags))));
        Assert.Equal((0.0, 3.0), (balance.EqualTo, balance.U));
    }

    [Theory]
    [InlineData("1*SL-F1 1*WF-F", "balance cannot be read at '1*WF-F'")]
    [InlineData("1*SL-F1 - ", "balance is not whole")]
    [InlineData("1*SL-F1", "balance is not whole")]
    [InlineData("1*SL-F1 - - 1*WF-F", "balance has two signs beside '-'")]
    [InlineData("1*SL-F1*WF-F*RG-F - WF-F", "balance cannot be read at '1*SL-F1*WF-F*RG-F'")]
    [InlineData("2 - WF-F", "balance cannot be read at '2'")]
    [InlineData("1*SL-F1 - 1*WF-X", "point 'WF-X' is unknown; nearest: ")]
    public void A_balance_that_cannot_be_read_is_refused(string terms, string told)
    {
        var mistakes = SiteReader.Read(Append($"[[balance]]\nname = \"soda\"\nterms = \"{terms}\"\n")).Mistakes;

        var mistake = Assert.Single(mistakes);
        Assert.Contains(told, mistake.ToString(), StringComparison.Ordinal);
        Assert.Equal(StarterSite.Files.Texts[Toml].Split('\n').Length + 3, mistake.Where.Line);
    }

    [Fact]
    public void A_file_that_is_no_toml_is_told_beside_the_mistakes_of_the_others()
    {
        var files = StarterSite.WithText(StarterSite.With(Csv, "RG-T,Raw", "RG-D,Raw"), Toml, "[site]\nid = \nname = \"x\"\n");

        var mistakes = SiteReader.Read(files).Mistakes;

        Assert.Contains(mistakes, m => m.Where is { File: Toml, Line: 2 });
        Assert.Contains(mistakes, m => m.Where is { File: Csv, Line: 3, Column: 1 });
    }

    [Fact]
    public void A_key_given_twice_is_told_at_its_line()
    {
        var mistakes = SiteReader.Read(StarterSite.With(Toml, "altitude_m = 12\n", "altitude_m = 12\naltitude_m = 13\n")).Mistakes;

        var line = StarterSite.Files.Texts[Toml].Split('\n').ToList().FindIndex(l => l.StartsWith("altitude_m", StringComparison.Ordinal)) + 2;
        Assert.Equal(line, Assert.Single(mistakes).Where.Line);
    }

    /// <summary>A stretch of a file cut out, doubled or put elsewhere, as a hand may do it.</summary>
    private static readonly Gen<SiteFiles> Mangled =
        from file in Any.Of(Toml, Csv, Cautions)
        from at in Gen.Int[0, StarterSite.Files.Texts[file].Length - 1]
        from length in Gen.Int[0, 60]
        from put in Gen.OneOf(Gen.String[Gen.Char["\"'[]{}=,.#\n -0aµ\0"], 0, 5], Gen.Const(""))
        let text = StarterSite.Files.Texts[file]
        select StarterSite.WithText(StarterSite.Files, file, string.Concat(text.AsSpan(0, at), put, text.AsSpan(Math.Min(text.Length, at + length))));

    [Fact]
    public void Whatever_a_file_holds_a_site_or_its_mistakes_come_back() => Mangled.Sample(files =>
    {
        var read = SiteReader.Read(files);
        return read.Ok != read.Mistakes.Count > 0 && read.Mistakes.All(m => m.Where.Line > 0 && m.Where.Column > 0);
    }, iter: 300);

    [Fact]
    public void An_empty_points_file_is_one_line() => Assert.StartsWith(
        "points.csv:1:1: the file is empty",
        SiteReader.Read(StarterSite.WithText(StarterSite.Files, Csv, "")).Mistakes.First(m => m.Where.File == Csv).ToString(),
        StringComparison.Ordinal);

    [Fact]
    public void A_missing_folder_names_every_file_that_is_not_there()
    {
        var loaded = SiteReader.Load(Path.Combine(AppContext.BaseDirectory, "nowhere"));

        Assert.Null(loaded.Value);
        Assert.Equal("site.toml points.csv cautions.toml", string.Join(' ', loaded.Mistakes.Select(m => m.Where.File)));
    }

    private static SiteFiles Append(string text) => StarterSite.WithText(StarterSite.Files, Toml, StarterSite.Files.Texts[Toml] + "\n" + text);
}
