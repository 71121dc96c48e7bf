using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>An id, or several joined by slashes.</summary>
internal sealed class IdKind<TEntity>(int parts = 1) : StringKind<Id<TEntity>>
{
    public override string? DefinitionName => parts == 1 ? "id" : "profileId";

    protected override string Title => "an id";

    protected override string Pattern => parts == 1 ? Patterns.Id : Patterns.ProfileId;

    public override Id<TEntity> Load(in Slot slot) => new((string)slot.A!);

    public override void Write(Utf8JsonWriter json, Id<TEntity> value) => json.WriteStringValue(value.Value);

    public override Unwritable? Check(Id<TEntity> value)
    {
        const int longest = 4 * AddressParser.MaxIdLength;
        Span<byte> bytes = stackalloc byte[3 * longest];
        if (value.IsNone)
        {
            return Unwritable.Of("nothing stands here");
        }

        ReadOnlySpan<byte> text = value.Value.Length > longest ? default : bytes[..Encoding.UTF8.GetBytes(value.Value, bytes)];
        return (parts == 1 ? AddressParser.IsId(text) : IsPath(text)) ? null : Unwritable.Of($"'{value}' is no id");
    }

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        if (parts == 1 ? !AddressParser.IsId(text) : !IsPath(text))
        {
            return session.Report(ReadingRules.ValueMalformed, offset, Explain(text));
        }

        slot.A = session.Name(text);
        return true;
    }

    private bool IsPath(ReadOnlySpan<byte> text)
    {
        for (var part = 1; part <= parts; part++)
        {
            var slash = text.IndexOf((byte)'/');
            if (slash < 0)
            {
                return AddressParser.IsId(text);
            }

            if (!AddressParser.IsId(text[..slash]))
            {
                return false;
            }

            text = text[(slash + 1)..];
        }

        return false;
    }

    private string Explain(ReadOnlySpan<byte> text)
    {
        var wanted =
            $"an id is 1 to {AddressParser.MaxIdLength} letters, digits, '.', '-' or '_' and starts with a letter or digit"
            + (parts == 1 ? "" : $"; up to {parts} such parts are joined by '/'");
        if (text.IsEmpty)
        {
            return $"the id is empty; {wanted}";
        }

        var rest = text;
        while (!rest.IsEmpty)
        {
            Rune.DecodeFromUtf8(rest, out var rune, out var length);
            var allowed = (rune.IsAscii && char.IsAsciiLetterOrDigit((char)rune.Value)) || rune.Value is '.' or '-' or '_' || (rune.Value == '/' && parts > 1);
            if (!allowed)
            {
                return $"the id {Quote.Text(text)} holds {Quote.Character(rune)}; {wanted}";
            }

            rest = rest[length..];
        }

        return $"{Quote.Text(text)} is no id; {wanted}";
    }
}
