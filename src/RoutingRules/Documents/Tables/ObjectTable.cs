using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>Makes the model from the values that were read.</summary>
internal delegate T Build<out T>(in Slots slots);

/// <summary>The table of a model type: drives reading, writing and the schema.</summary>
internal sealed class ObjectTable<T>(ObjectShape shape, Member<T>[] members, Build<T> build) : Kind<T>
    where T : class
{
    public ObjectShape Shape { get; } = shape;

    public override string? DefinitionName => Shape.Definition;

    public override T Load(in Slot slot) => (T)slot.A!;

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType != JsonTokenType.StartObject)
        {
            return session.WrongType(ref json, $"an object ({Shape.Title})");
        }

        session.CheckDepth(ref json);
        var start = json.TokenStartIndex;
        var seen = 0UL;
        var next = 0;
        session.Enter(Shape);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var index = Find(ref json, session, next);
            if (index < 0 || (seen >> index & 1) != 0)
            {
                Refuse(ref json, session, index);
                continue;
            }

            seen |= 1UL << index;
            next = index + 1;
            session.AtMember(index);
            json.Read();
            if (members[index].Kind.TryRead(ref json, session, out var value))
            {
                session.Keep(in value);
            }
        }

        session.AtMember(-1);
        var complete = IsComplete(session, seen, start);
        if (complete)
        {
            slot.A = build(session.Values);
        }

        session.Leave();
        return complete;
    }

    public override void Write(Utf8JsonWriter json, T value)
    {
        json.WriteStartObject();
        foreach (var member in members)
        {
            member.Write(json, value);
        }

        json.WriteEndObject();
    }

    public override Unwritable? Check(T value)
    {
        if (value is null)
        {
            return Unwritable.Of("nothing stands here");
        }

        foreach (var member in members)
        {
            if (member.Check(value) is { } wrong)
            {
                return wrong;
            }
        }

        var there = Shape.Choice.Count(alternative => IsAnySaid(value, alternative));
        return Shape.Choice.Length == 0 || there == 1
            ? null
            : Unwritable.Of(
                $"{(there == 0 ? "one of these must be there" : "only one of these may be there")}: {string.Join(", or ", Shape.Choice.Select(Names))}"
            );
    }

    private bool IsAnySaid(T value, ulong alternative)
    {
        for (var i = 0; i < members.Length; i++)
        {
            if ((alternative >> i & 1) != 0 && members[i].IsSaid(value))
            {
                return true;
            }
        }

        return false;
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => schema.WriteDescribedObject(json, Shape);

    private int Find(ref Utf8JsonReader json, ReadSession session, int expected)
    {
        if (!json.ValueIsEscaped)
        {
            return Shape.Find(json.ValueSpan, expected);
        }

        return session.TryUnescape(ref json, out var name) ? Shape.Find(name, expected) : -1;
    }

    private void Refuse(ref Utf8JsonReader json, ReadSession session, int index)
    {
        session.AtMember(-1);
        var name = json.ValueIsEscaped && !session.TryUnescape(ref json, out _) ? System.Text.Encoding.UTF8.GetString(json.ValueSpan) : json.GetString()!;
        if (index >= 0)
        {
            session.Report(ReadingRules.MemberDuplicate, json.TokenStartIndex, "this member is written twice; only the first was read", name);
        }
        else
        {
            var meant = Shape.Nearest(name);
            session.Report(
                ReadingRules.MemberUnknown,
                json.TokenStartIndex,
                $"the format has no such member here{(meant is null ? "" : $"; did you mean \"{meant}\"?")}",
                name,
                meant is null ? null : $"Write \"{meant}\", or move the content under extensions."
            );
        }

        json.Read();
        session.Skip(ref json);
    }

    private bool IsComplete(ReadSession session, ulong seen, long start)
    {
        if ((Shape.RequiredMask & ~seen) != 0)
        {
            ReportMissing(session, Shape.RequiredMask & ~seen, start);
        }

        var valid = session.Valid;
        return (Shape.RequiredMask & ~valid) == 0 && (Shape.Choice.Length == 0 || IsChosen(session, seen, valid, start));
    }

    private void ReportMissing(ReadSession session, ulong missing, long start)
    {
        for (var i = 0; i < members.Length; i++)
        {
            if ((missing >> i & 1) != 0)
            {
                session.Report(ReadingRules.MemberMissing, start, $"this member is missing: {members[i].Doc}", members[i].Name);
            }
        }
    }

    private bool IsChosen(ReadSession session, ulong seen, ulong valid, long start)
    {
        var there = 0;
        var readable = false;
        foreach (var alternative in Shape.Choice)
        {
            there += (seen & alternative) != 0 ? 1 : 0;
            readable |= (valid & alternative) != 0;
        }

        if (there == 1)
        {
            return readable;
        }

        var names = string.Join(", or ", Shape.Choice.Select(Names));
        return session.Report(
            ReadingRules.MembersExclusive,
            start,
            there == 0 ? $"one of these must be there: {names}" : $"only one of these may be there: {names}"
        );
    }

    private string Names(ulong mask) => string.Join(" and ", members.Where((_, i) => (mask >> i & 1) != 0).Select(member => $"\"{member.Name}\""));
}
