using System.Globalization;
using System.Text.Json;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>A list.</summary>
/// <param name="element">What its elements are.</param>
/// <param name="min">How many there must be.</param>
/// <param name="max">How many there may be.</param>
/// <param name="unique">Whether no element may stand in it twice; for short lists only.</param>
internal sealed class ListKind<T>(Kind<T> element, int min = 0, int max = int.MaxValue, bool unique = false) : Kind<ValueList<T>>
{
    public override ValueList<T> Load(in Slot slot) => ValueList.Adopt((T[])slot.A!);

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType != JsonTokenType.StartArray)
        {
            return session.WrongType(ref json, "a list", json.TokenType is JsonTokenType.Null ? null : "Put the value in square brackets.");
        }

        session.CheckDepth(ref json);
        var start = json.TokenStartIndex;
        var limit = Math.Min(max, session.Limits.Elements);
        var buffer = default(ListBuffer<T>);
        var count = 0;
        while (json.Read() && json.TokenType != JsonTokenType.EndArray)
        {
            if (count >= limit)
            {
                count++;
                session.Skip(ref json);
                continue;
            }

            session.AtElement(count++);
            if (element.TryRead(ref json, session, out var value))
            {
                buffer.Add(element.Load(in value));
            }
        }

        session.AtElement(-1);
        var items = buffer.ToArray();
        slot.A = items;
        return CountFits(session, start, count, limit) && (!unique || NoneTwice(session, start, items));
    }

    public override void Write(Utf8JsonWriter json, ValueList<T> value)
    {
        json.WriteStartArray();
        foreach (var item in value)
        {
            element.Write(json, item);
        }

        json.WriteEndArray();
    }

    public override Unwritable? Check(ValueList<T> value)
    {
        if (value.Count < min || value.Count > Math.Min(max, ReadLimits.Default.Elements))
        {
            return Unwritable.Of(
                value.IsEmpty ? "the list is empty" : $"the list has {value.Count} entries, {(value.Count < min ? "fewer" : "more")} than it may have"
            );
        }

        var seen = unique ? new HashSet<T>() : null;
        for (var i = 0; i < value.Count; i++)
        {
            if (element.Check(value[i]) is { } wrong)
            {
                return wrong.Under(i.ToString(CultureInfo.InvariantCulture));
            }

            if (seen?.Add(value[i]) == false)
            {
                return Unwritable.Of($"{value[i]} stands in the list twice");
            }
        }

        return null;
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => schema.WriteList(json, element, min, max, unique);

    private bool CountFits(ReadSession session, long start, int count, int limit)
    {
        if (count > limit)
        {
            return session.Report(ReadingRules.ValueOutOfRange, start, $"the list has {count} entries, more than {limit}");
        }

        return count >= min
            || session.Report(
                ReadingRules.ValueOutOfRange,
                start,
                count == 0 ? "the list is empty" : $"the list has {count} entries, fewer than {min}",
                remedy: min == 1 ? "Write at least one entry, or leave the member out if it may be absent." : null
            );
    }

    private static bool NoneTwice(ReadSession session, long start, T[] items)
    {
        for (var i = 1; i < items.Length; i++)
        {
            if (Array.IndexOf(items, items[i], 0, i) >= 0)
            {
                return session.Report(ReadingRules.ValueMalformed, start, $"{items[i]} stands in the list twice");
            }
        }

        return true;
    }
}
