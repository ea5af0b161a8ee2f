using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A result, member by member: see <see cref="MemberNames"/>.</summary>
internal sealed class ResultByMember : JsonConverter<Result>
{
    private static readonly MemberNames Names = new("by", "covers", "name", "output", "point", "u", "unit", "value");

    public override Result Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var (seen, u, value) = (0u, default(double?), default(double?));
        string? by = null, covers = null, name = null, output = null, point = null, unit = null;
        for (var place = Names.Next(ref reader, ref seen, -1); place >= 0; place = Names.Next(ref reader, ref seen, place))
        {
            switch (place)
            {
                case 0: by = SharedText.OrNull(ref reader); break;
                case 1: covers = SharedText.OrNull(ref reader); break;
                case 2: name = SharedText.OrNull(ref reader); break;
                case 3: output = SharedText.OrNull(ref reader); break;
                case 4: point = SharedText.OrNull(ref reader); break;
                case 5: u = NumberAsText.OrNull(ref reader); break;
                case 6: unit = SharedText.OrNull(ref reader); break;
                default: value = NumberAsText.OrNull(ref reader); break;
            }
        }

        return new Result(
            name ?? throw new JsonException("a result without its calculation"), output ?? throw new JsonException("a result without its output"), point,
            value ?? throw new JsonException("a result without a value"), unit ?? throw new JsonException("a result without a unit"), u, covers,
            by ?? throw new JsonException("a result without who computed it"));
    }

    public override void Write(Utf8JsonWriter writer, Result value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteString("name", value.Name);
        writer.WriteString("output", value.Output);
        writer.WriteText("point", value.Point);
        NumberAsText.Write(writer, "value", value.Value);
        writer.WriteString("unit", value.Unit);
        NumberAsText.Write(writer, "u", value.U);
        writer.WriteText("covers", value.Covers);
        writer.WriteString("by", value.By);
        writer.WriteEndObject();
    }
}
