namespace RoutingRules.Documents.Tables;

/// <summary>Where the reader is inside one object.</summary>
internal struct Frame
{
    public ObjectShape Shape;
    public int FirstSlot;
    public int Member;
    public int Element;
    public ulong Valid;
}
