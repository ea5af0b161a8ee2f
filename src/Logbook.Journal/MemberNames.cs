using System.Text;
using System.Text.Json;

namespace Logbook.Journal;

/// <summary>
/// The members of a JSON object, one by one. Years of records are mostly readings and results: what the library takes for each
/// member of a form that is made as a whole (a box, a place in a list) is most of the time that an audit of years takes.
/// </summary>
/// <param name="names">In the order of canonical bytes: there the next name is nearly always the next one found. Up to 32.</param>
internal sealed class MemberNames(params string[] names)
{
    private readonly byte[][] _names = [.. names.Select(Encoding.UTF8.GetBytes)];

    /// <summary>Place of the next member that has one of the names, with the reader on its value; -1 at the end of the object. Other members are passed over.</summary>
    /// <param name="seen">Zero at first, kept by the caller from call to call.</param>
    /// <param name="before">What the call before gave; -1 at first.</param>
    /// <exception cref="JsonException">It is no object, or one of the names stands twice.</exception>
    public int Next(ref Utf8JsonReader reader, ref uint seen, int before)
    {
        if (before < 0 && reader.TokenType != JsonTokenType.StartObject)
            throw new JsonException("not an object");
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var place = Place(ref reader, before + 1);
            reader.Read();
            if (place < 0)
            {
                reader.Skip();
                continue;
            }

            if ((seen & (1u << place)) != 0)
                throw new JsonException($"{names[place]} stands twice");
            seen |= 1u << place;
            return place;
        }

        return -1;
    }

    private int Place(ref Utf8JsonReader reader, int from)
    {
        for (var i = 0; i < _names.Length; i++)
        {
            var place = (from + i) % _names.Length;
            if (reader.ValueTextEquals(_names[place]))
                return place;
        }

        return -1;
    }
}
