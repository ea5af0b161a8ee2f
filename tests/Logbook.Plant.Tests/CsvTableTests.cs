using Logbook.Plant;

namespace Logbook.Plant.Tests;

public sealed class CsvTableTests
{
    private static Parsed<CsvTable> Read(string text) => CsvTable.Read("r.csv", text, ["point", "value", "unit"], ["point", "value"]);

    [Fact]
    public void Columns_come_in_any_order_and_may_be_left_out()
    {
        var row = Assert.Single(Read("value,Point\n103.4,SL-T1\n").Value!.Rows);

        Assert.Equal(("SL-T1", "103.4", ""), (row["point"], row["value"], row["unit"]));
        Assert.Equal(new Place("r.csv", 2, 7), row.PlaceOf("point"));
    }

    [Fact]
    public void A_field_with_a_comma_stands_in_marks_and_keeps_its_place()
    {
        var rows = Read("\uFEFFpoint,value,unit\n# a comment\n\n\"A \"\"x\"\", µ\",\"1,5\", m³/h \r\n").Value!.Rows;

        var row = Assert.Single(rows);
        Assert.Equal(("A \"x\", µ", "1,5", "m³/h"), (row["point"], row["value"], row["unit"]));
        Assert.Equal((new Place("r.csv", 4, 1), new Place("r.csv", 4, 14), new Place("r.csv", 4, 20)), (row.PlaceOf("point"), row.PlaceOf("value"), row.PlaceOf("unit")));
    }

    [Theory]
    [InlineData("", "r.csv:1:1: the file is empty; the first line names the columns: point, value, unit")]
    [InlineData("point,value\nSL-T1\n", "r.csv:2:1: the row has 1 fields, the first line names 2 columns; every row has a field for each column, empty or not")]
    [InlineData("point,value\nSL-T1,1,2\n", "r.csv:2:1: the row has 3 fields, the first line names 2 columns; every row has a field for each column, empty or not")]
    [InlineData("point,value,poimt\n", "r.csv:1:13: column 'poimt' is unknown; nearest: point")]
    [InlineData("point,value,value\n", "r.csv:1:13: column 'value' comes twice")]
    [InlineData("point\nSL-T1\n", "r.csv:1:1: column 'value' is missing; the first line names the columns, separated by commas")]
    [InlineData("point,value\n\"SL-T1,1\nSL-F1,2\n", "r.csv:2:1: a quotation mark does not match another; a field with a comma stands in \"...\", a mark inside it is doubled")]
    public void What_is_no_table_is_told_with_its_line(string text, string told) =>
        Assert.Contains(Read(text).Mistakes, m => m.ToString() == told);

    [Fact]
    public void Whole_rows_are_given_beside_the_mistakes_of_the_others()
    {
        var table = Read("point,value\nA,1\nB\nC,3\n");

        Assert.Equal("A C", string.Join(' ', table.Value!.Rows.Select(r => r["point"])));
        Assert.Equal(3, Assert.Single(table.Mistakes).Where.Line);
    }
}
