using System.Buffers;
using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A text for people: any characters but control characters.</summary>
/// <param name="empty">Whether it may be empty.</param>
/// <param name="repeats">Whether the same text is likely to stand in many places.</param>
internal sealed class TextKind(bool empty, bool repeats = false) : StringKind<string>
{
    /// <summary>The longest text in UTF-16 units.</summary>
    public const int MaxLength = 4096;

    public override string? DefinitionName => empty ? "text" : "filledText";

    protected override string Title => "a text";

    protected override string Pattern => string.Create(CultureInfo.InvariantCulture, $@"^[^\u0000-\u001F\u007F-\u009F]{{{(empty ? 0 : 1)},{MaxLength}}}$");

    public override string Load(in Slot slot) => (string)slot.A!;

    public override void Write(System.Text.Json.Utf8JsonWriter json, string value) => json.WriteStringValue(value);

    public override Unwritable? Check(string value) =>
        value is null ? Unwritable.Of("nothing stands here")
        : value.Length == 0 && !empty ? Unwritable.Of("the text is empty")
        : value.Length > MaxLength ? Unwritable.Of($"the text is longer than {MaxLength} characters")
        : value.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 || IsPlain(value) ? null
        : Unwritable.Of("the text holds a control character or half of a surrogate pair");

    private static bool IsPlain(string value)
    {
        var rest = value.AsSpan();
        while (!rest.IsEmpty)
        {
            if (Rune.DecodeFromUtf16(rest, out var rune, out var length) != OperationStatus.Done || Rune.IsControl(rune))
            {
                return false;
            }

            rest = rest[length..];
        }

        return true;
    }

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        if (text.IsEmpty && !empty)
        {
            return session.Report(
                ReadingRules.ValueOutOfRange,
                offset,
                "the text is empty",
                remedy: "Write at least one character, or leave the member out if it may be absent."
            );
        }

        if (text.Length > MaxLength && Encoding.UTF8.GetCharCount(text) > MaxLength)
        {
            return session.Report(ReadingRules.ValueOutOfRange, offset, $"the text is longer than {MaxLength} characters");
        }

        var special = text.IndexOfAnyExceptInRange((byte)0x20, (byte)0x7E);
        if (special >= 0 && FindControl(text[special..]) is { } control)
        {
            return session.Report(
                ReadingRules.ValueMalformed,
                offset,
                $"the text holds {Quote.Character(control)}, which no label can show",
                remedy: "Take the control character out."
            );
        }

        slot.A = repeats && special < 0 ? session.Name(text) : Encoding.UTF8.GetString(text);
        return true;
    }

    private static Rune? FindControl(ReadOnlySpan<byte> text)
    {
        while (!text.IsEmpty)
        {
            Rune.DecodeFromUtf8(text, out var rune, out var length);
            if (Rune.IsControl(rune))
            {
                return rune;
            }

            text = text[length..];
        }

        return null;
    }
}
