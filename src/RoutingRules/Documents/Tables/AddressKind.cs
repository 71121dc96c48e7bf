using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>A value that ends in a number or a range of numbers.</summary>
/// <param name="ids">How many ids stand before the numbers.</param>
/// <param name="shape">The wanted shape with an example.</param>
internal abstract class AddressKind<T>(int ids, string shape) : StringKind<T>
{
    /// <summary>Whether one number only is allowed.</summary>
    protected virtual bool IsSingle => false;

    protected sealed override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        var problem = AddressParser.Parse(text, ids, out var firstSlash, out var lastSlash, out var first, out var last);
        if (problem != AddressProblem.None)
        {
            return session.Report(ReadingRules.ValueMalformed, offset, $"{Quote.Text(text)} {AddressParser.Explain(problem, shape)}");
        }

        if (IsSingle && text[(lastSlash + 1)..].Contains((byte)'-'))
        {
            return session.Report(ReadingRules.ValueMalformed, offset, $"{Quote.Text(text)} is a range where one number belongs; write {shape}");
        }

        if (ids > 0)
        {
            slot.A = session.Name(text[..firstSlash]);
        }

        if (ids > 1)
        {
            slot.B = session.Name(text[(firstSlash + 1)..lastSlash]);
        }

        slot.N = ((long)first << 32) | (uint)last;
        return true;
    }

    /// <summary>The text as a document has it; null for <c>default</c>.</summary>
    protected abstract string? Text(T value);

    public sealed override Unwritable? Check(T value)
    {
        var text = Text(value);
        if (text is null)
        {
            return Unwritable.Of("nothing stands here");
        }

        Span<byte> bytes = stackalloc byte[3 * AddressParser.MaxLength];
        var problem =
            text.Length > AddressParser.MaxLength
                ? AddressProblem.TooLong
                : AddressParser.Parse(bytes[..Encoding.UTF8.GetBytes(text, bytes)], ids, out _, out _, out _, out _);
        return problem != AddressProblem.None ? Unwritable.Of($"'{text}' {AddressParser.Explain(problem, shape)}")
            : IsSingle && text[(text.LastIndexOf('/') + 1)..].Contains('-', StringComparison.Ordinal)
                ? Unwritable.Of($"'{text}' is a range where one number belongs")
            : null;
    }

    protected static int First(in Slot slot) => (int)(slot.N >> 32);

    protected static int Last(in Slot slot) => (int)slot.N;
}
