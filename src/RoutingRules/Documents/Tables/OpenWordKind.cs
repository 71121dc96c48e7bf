using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A word of an open list: lower-case letters, digits and single hyphens.</summary>
/// <param name="what">What it names, for messages: <c>a role</c>.</param>
/// <param name="make">Wraps a word.</param>
/// <param name="text">Unwraps it.</param>
/// <param name="example">A word that the engine knows.</param>
/// <param name="known">All of them.</param>
internal sealed class OpenWordKind<T>(string what, Func<string, T> make, Func<T, string> text, string example, KnownWords known) : StringKind<T>
{
    private const int MaxLength = 64;

    public override string? DefinitionName => "word";

    protected override string Title => what;

    protected override string Pattern => Patterns.Word;

    public override T Load(in Slot slot) => make((string)slot.A!);

    public override void Write(Utf8JsonWriter json, T value) => json.WriteStringValue(text(value));

    public override Unwritable? Check(T value) =>
        text(value) is { Length: > 0 and <= MaxLength } word && IsWord(word)
            ? null
            : Unwritable.Of($"'{text(value)}' is no word; a word is of lower-case letters and digits, joined by single hyphens, such as {example}");

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        if (text.Length > MaxLength)
        {
            return session.Report(ReadingRules.ValueOutOfRange, offset, $"the word is longer than {MaxLength} characters");
        }

        if (!IsWord(text))
        {
            var meant = known.Meant(Encoding.UTF8.GetString(text));
            return session.Report(
                ReadingRules.ValueMalformed,
                offset,
                $"{Quote.Text(text)} is no word; write lower-case letters and digits, joined by single hyphens, such as "
                    + $"{example}{(meant is null ? "" : $"; did you mean {meant}?")}"
            );
        }

        slot.A = session.Name(text);
        return true;
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        base.WriteKeywords(json, schema);
        json.WriteNumber("maxLength", MaxLength);
    }

    private static bool IsWord(string word)
    {
        Span<byte> text = stackalloc byte[3 * MaxLength];
        return IsWord(text[..Encoding.UTF8.GetBytes(word, text)]);
    }

    private static bool IsWord(ReadOnlySpan<byte> text)
    {
        var letters = 0;
        foreach (var value in text)
        {
            if (value is (>= (byte)'a' and <= (byte)'z') or (>= (byte)'0' and <= (byte)'9'))
            {
                letters++;
            }
            else if (value == (byte)'-' && letters > 0)
            {
                letters = 0;
            }
            else
            {
                return false;
            }
        }

        return letters > 0;
    }
}
