using System.Globalization;
using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Tables;

/// <content>Problems with their place, in words and as a pointer.</content>
internal sealed partial class ReadSession
{
    private List<Problem>? problems;

    /// <summary>How many problems got no finding of their own.</summary>
    public int LeftOut { get; private set; }

    /// <summary>The problems in the order they were met; null when there is none.</summary>
    public List<Problem>? Problems => problems;

    /// <summary>Notes a problem.</summary>
    /// <param name="rule">What kind it is.</param>
    /// <param name="offset">Position in the text, in bytes.</param>
    /// <param name="message">What is wrong; the place is put before it.</param>
    /// <param name="member">The member of the present object it is about, when that is not the present member.</param>
    /// <param name="remedy">What to do, when it is not the usual remedy of the rule.</param>
    /// <returns>False, so that a caller can report and fail in one line.</returns>
    public bool Report(RuleDescriptor rule, long offset, string message, string? member = null, string? remedy = null)
    {
        problems ??= [];
        if (problems.Count >= Limits.Problems && rule != ReadingRules.DocumentUnreadable)
        {
            LeftOut++;
            return false;
        }

        problems.Add(new Problem(rule, offset, Pointer(member), Sentence(Place(member), message), remedy ?? rule.Remedy));
        return false;
    }

    /// <summary>Reports a value of the wrong JSON type and passes over it.</summary>
    /// <param name="json">At the value.</param>
    /// <param name="expected">What belongs there, such as <c>a text</c>.</param>
    /// <param name="remedy">What to write instead; null for the usual remedy.</param>
    public bool WrongType(ref Utf8JsonReader json, string expected, string? remedy = null)
    {
        var found = json.TokenType switch
        {
            JsonTokenType.StartObject => "an object",
            JsonTokenType.StartArray => "a list",
            JsonTokenType.String => $"the text {Quote.Text(json.ValueSpan)}",
            JsonTokenType.Number => $"the number {Quote.Plain(json.ValueSpan)}",
            JsonTokenType.Null => "null",
            _ => Encoding.UTF8.GetString(json.ValueSpan),
        };
        remedy ??= json.TokenType == JsonTokenType.Null ? "Write a value, or leave the member out." : null;
        Report(ReadingRules.ValueWrongType, json.TokenStartIndex, $"{expected} belongs here, not {found}", remedy: remedy);
        Skip(ref json);
        return false;
    }

    /// <summary>The place in words, for the fault of a text that could not be read to its end; empty at the root.</summary>
    public string Place(string? member = null)
    {
        var place = new StringBuilder();
        for (var level = 1; level <= depth; level++)
        {
            var parent = frames[level - 1];
            if (parent.Element < 0 && level < depth)
            {
                continue;
            }

            Separate(place).Append(frames[level].Shape.Title);
            if (parent.Element >= 0)
            {
                place.Append(CultureInfo.InvariantCulture, $" {parent.Element + 1}");
            }

            if (IdOf(frames[level]) is { } id)
            {
                place.Append(CultureInfo.InvariantCulture, $" ({id})");
            }
        }

        if (depth >= 0 && (member is not null || frames[depth].Member >= 0))
        {
            var name = member ?? frames[depth].Shape.Members[frames[depth].Member].Name;
            Separate(place).Append(Quote.Text(Encoding.UTF8.GetBytes(name)));
            if (member is null && frames[depth].Element >= 0)
            {
                place.Append(CultureInfo.InvariantCulture, $" entry {frames[depth].Element + 1}");
            }
        }

        if (place.Length == 0)
        {
            return "";
        }

        place[0] = char.ToUpperInvariant(place[0]);
        return place.Append(": ").ToString();
    }

    private string Pointer(string? member)
    {
        var pointer = new StringBuilder();
        for (var level = 0; level <= depth; level++)
        {
            var frame = frames[level];
            if (level == depth && member is not null)
            {
                JsonPointer.Append(pointer, member);
            }
            else if (frame.Member >= 0)
            {
                JsonPointer.Append(pointer, frame.Shape.Members[frame.Member].Name);
                if (frame.Element >= 0)
                {
                    pointer.Append(CultureInfo.InvariantCulture, $"/{frame.Element}");
                }
            }
        }

        return pointer.ToString();
    }

    private string? IdOf(in Frame frame) =>
        frame.Shape.IdIndex is >= 0 and var index && (frame.Valid >> index & 1) != 0 ? slots[frame.FirstSlot + index].A as string : null;

    private static string Sentence(string place, string message)
    {
        var start = place.Length > 0 ? place + message : char.ToUpperInvariant(message[0]) + message[1..];
        return message[^1] is '.' or '?' ? start : start + ".";
    }

    private static StringBuilder Separate(StringBuilder place) => place.Length > 0 ? place.Append(", ") : place;
}
