namespace RoutingRules.Documents.Tables;

/// <summary>One read value on its way into the model, without boxing: what each field holds is up to the kind of value.</summary>
internal struct Slot
{
    public object? A;
    public object? B;
    public long N;
}
