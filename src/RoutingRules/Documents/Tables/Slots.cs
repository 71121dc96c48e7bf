namespace RoutingRules.Documents.Tables;

/// <summary>The values read for one object, in table order.</summary>
internal readonly ref struct Slots(ReadOnlySpan<Slot> values, ulong valid)
{
    private readonly ReadOnlySpan<Slot> values = values;

    public bool Has(int index) => (valid >> index & 1) != 0;

    public ref readonly Slot this[int index] => ref values[index];
}
