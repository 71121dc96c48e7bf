using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A word of a closed list.</summary>
/// <param name="definition">Its name in schemas.</param>
/// <param name="words">Each word with its value, in the order in which people are shown them.</param>
internal sealed class ClosedWordKind<T>(string definition, params (string Word, T Value)[] words) : StringKind<T>
{
    private readonly byte[][] texts = [.. words.Select(word => Encoding.UTF8.GetBytes(word.Word))];

    /// <summary>Words of other ways to say it, each with the word of the list and why it is that one.</summary>
    public IReadOnlyList<(string Other, string Word, string Why)> Elsewhere { get; init; } = [];

    public override string? DefinitionName => definition;

    protected override string Title => "a word";

    protected override string Pattern => "";

    public override T Load(in Slot slot) => words[slot.N].Value;

    public override void Write(Utf8JsonWriter json, T value)
    {
        foreach (var word in words)
        {
            if (EqualityComparer<T>.Default.Equals(word.Value, value))
            {
                json.WriteStringValue(word.Word);
                return;
            }
        }

        throw new ArgumentException($"The document format has no word for {value}.", nameof(value));
    }

    public override Unwritable? Check(T value)
    {
        foreach (var word in words)
        {
            if (EqualityComparer<T>.Default.Equals(word.Value, value))
            {
                return null;
            }
        }

        return Unwritable.Of($"{value} is none of {string.Join(", ", words.Select(word => word.Word))}");
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        json.WriteString("type", "string");
        json.WriteStartArray("enum");
        foreach (var word in words)
        {
            json.WriteStringValue(word.Word);
        }

        json.WriteEndArray();
    }

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        for (var i = 0; i < texts.Length; i++)
        {
            if (texts[i].AsSpan().SequenceEqual(text))
            {
                slot.N = i;
                return true;
            }
        }

        var all = words.Select(word => word.Word);
        var written = Encoding.UTF8.GetString(text);
        var other = Elsewhere.FirstOrDefault(entry => string.Equals(entry.Other, written, StringComparison.OrdinalIgnoreCase));
        var meant = other.Word is null ? Spelling.Nearest(written, all) : $"{other.Word}, {other.Why}";
        return session.Report(
            ReadingRules.ValueMalformed,
            offset,
            $"{Quote.Text(text)} is not one of {string.Join(", ", all)}{(meant is null ? "" : $"; did you mean {meant}?")}"
        );
    }
}
