using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A reading, member by member: see <see cref="MemberNames"/>.</summary>
internal sealed class ReadingByMember : JsonConverter<Reading>
{
    private static readonly MemberNames Names = new("at", "point", "remark", "retyped", "second", "typed", "unit", "value", "why");

    public override Reading Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var (seen, at, value) = (0u, default(DateTimeOffset?), default(double?));
        string? point = null, remark = null, retyped = null, second = null, typed = null, unit = null, why = null;
        for (var place = Names.Next(ref reader, ref seen, -1); place >= 0; place = Names.Next(ref reader, ref seen, place))
        {
            switch (place)
            {
                case 0: at = TimeAsText.Of(ref reader); break;
                case 1: point = SharedText.OrNull(ref reader); break;
                case 2: remark = reader.GetString(); break;
                case 3: retyped = reader.GetString(); break;
                case 4: second = reader.GetString(); break;
                case 5: typed = SharedText.OrNull(ref reader); break;
                case 6: unit = SharedText.OrNull(ref reader); break;
                case 7: value = NumberAsText.OrNull(ref reader); break;
                default: why = reader.GetString(); break;
            }
        }

        return new Reading
        {
            Point = point ?? throw new JsonException("a reading without a point"),
            Unit = unit ?? throw new JsonException("a reading without a unit"),
            At = at ?? throw new JsonException("a reading without its time"),
            Typed = typed, Value = value, Why = why, Second = second, Retyped = retyped, Remark = remark,
        };
    }

    public override void Write(Utf8JsonWriter writer, Reading value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteString("point", value.Point);
        writer.WriteText("typed", value.Typed);
        NumberAsText.Write(writer, "value", value.Value);
        writer.WriteString("unit", value.Unit);
        writer.WritePropertyName("at");
        TimeAsText.Write(writer, value.At);
        writer.WriteText("why", value.Why);
        writer.WriteText("second", value.Second);
        writer.WriteText("retyped", value.Retyped);
        writer.WriteText("remark", value.Remark);
        writer.WriteEndObject();
    }
}
