using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What transmit slots carry in a wiring in the making.</summary>
internal sealed class SlotContents
{
    public const int Undecided = -1;
    public const int Empty = -2;

    /// <summary>Contents of this less a source: the slot is empty or carries that source.</summary>
    private const int OnlyBase = -3;

    /// <summary>Stands for a slot that no fixed routing feeds.</summary>
    private const int NotFixed = -2;

    private readonly AssignmentProblem problem;
    private readonly ChangeTrail trail;
    private readonly int[] upstream;
    private readonly int[] content;
    private readonly int[] slotFixed;
    private readonly bool[] slotClearable;

    /// <summary>Transmit slots that arrive where nothing private may.</summary>
    private readonly int[] exposed;

    /// <summary>Fixed contents and those of kept streams stand before any choice.</summary>
    public SlotContents(AssignmentProblem problem, ChangeTrail trail)
    {
        this.problem = problem;
        this.trail = trail;
        var graph = problem.Show.Graph;
        upstream = graph.Upstreams.ToArray();
        content = new int[graph.PointCount];
        Array.Fill(content, Undecided);
        slotFixed = new int[graph.PointCount];
        slotClearable = new bool[graph.PointCount];
        exposed = problem.Exposure.IsAny ? new int[graph.PointCount] : [];
        foreach (var block in problem.TransmitBlocks)
        {
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                slotFixed[slot] = NotFixed;
                if (graph.FixedSource(new(slot)) is { } always)
                {
                    slotFixed[slot] = always.Value;
                    slotClearable[slot] = graph.IsClearable(new(slot));
                    if (!slotClearable[slot])
                    {
                        content[slot] = always.IsNone ? Empty : always.Value;
                    }
                }

                if (block.IsKept)
                {
                    content[slot] = upstream[slot] < 0 ? Empty : upstream[slot];
                }
            }
        }
    }

    public int ContentOf(int slot) => content[slot];

    /// <summary>What a point takes in the input.</summary>
    public int InputContent(int slot) => upstream[slot];

    /// <summary>True when a slot carries something else than in the input.</summary>
    public bool Changes(int slot) => upstream[slot] != content[slot];

    /// <summary>Puts a source into a slot.</summary>
    /// <returns>False when the slot cannot carry it or carries something else.</returns>
    public bool Fill(int slot, int source)
    {
        // A dead or reserved slot carries nothing that anybody depends on, whatever the input has there.
        if (problem.IsBarred[slot])
        {
            return false;
        }

        if (content[slot] == source)
        {
            return true;
        }

        if (slot == source)
        {
            if (content[slot] == Undecided)
            {
                trail.Set(content, slot, upstream[slot] < 0 ? Empty : upstream[slot]);
            }

            return true;
        }

        if ((content[slot] != Undecided && content[slot] != OnlyBase - source) || !CanCarry(slot, source))
        {
            return false;
        }

        return
            slotFixed[slot] == NotFixed
            && problem.Blocks.Find(source, slot) is { } together
            && (together.Size > 1 || problem.Blocks.IsLeftEmpty(together.FirstSink + 1, together.FirstSink, together.FirstSource))
            ? FillTogether(together)
            : Put(slot, source);
    }

    private bool FillTogether((int FirstSink, int FirstSource, int Size) together)
    {
        for (var position = 0; position < together.Size; position++)
        {
            var slot = together.FirstSink + position;
            if (content[slot] != Undecided || problem.TransmitBlockOf[slot] < 0 || !Put(slot, together.FirstSource + position))
            {
                return false;
            }
        }

        for (var slot = together.FirstSink + together.Size; problem.Blocks.IsLeftEmpty(slot, together.FirstSink, together.FirstSource); slot++)
        {
            if (content[slot] is not (Undecided or Empty))
            {
                return false;
            }

            Put(slot, Empty);
        }

        return true;
    }

    private bool Put(int slot, int source)
    {
        if (IsOverheard(slot, source))
        {
            return false;
        }

        trail.Set(content, slot, source);
        return true;
    }

    /// <summary>True when a slot carries nothing yet and may carry a source.</summary>
    public bool IsOpenTo(int slot, int source) =>
        !problem.IsBarred[slot] && (content[slot] == Undecided || content[slot] == OnlyBase - source) && CanCarry(slot, source) && !IsOverheard(slot, source);

    /// <summary>True when what a slot carried in the input would now be heard where nothing private may.</summary>
    public bool IsOverheard(int slot) => IsOverheard(slot, upstream[slot]);

    private bool IsOverheard(int slot, int source) => exposed.Length > 0 && exposed[slot] > 0 && problem.Exposure.IsPrivate(source);

    /// <summary>Lets a slot arrive where nothing private may.</summary>
    /// <returns>False when it carries something private that could have travelled elsewhere.</returns>
    public bool Expose(int slot)
    {
        if (problem.Exposure.IsPrivate(content[slot]) && (slotFixed[slot] < 0 || slotClearable[slot]))
        {
            return false;
        }

        trail.Set(exposed, slot, 1);
        return true;
    }

    private bool CanCarry(int slot, int source)
    {
        if (slotFixed[slot] != NotFixed)
        {
            return slotFixed[slot] == source;
        }

        return slot == source
            || problem.Show.Graph.RoutingBetween(new(source), new(slot)) is { Mode: Profiles.RoutingMode.Free }
            || problem.Blocks.Find(source, slot) is not null;
    }

    /// <summary>Demands that a slot carry nothing that sounds at an idle output.</summary>
    /// <returns>False when it carries something that could have been left out.</returns>
    public bool Silence(int slot, int output)
    {
        var carried = content[slot];
        var tolerated = problem.Tolerated[output];
        if (carried is Undecided or <= OnlyBase)
        {
            var only = tolerated < 0 || (carried <= OnlyBase && carried != OnlyBase - tolerated) ? Empty : OnlyBase - tolerated;
            trail.Set(content, slot, only);
            return true;
        }

        var isForced = slotFixed[slot] >= 0 && !slotClearable[slot];
        return carried == Empty || isForced || tolerated == carried;
    }

    /// <summary>True when slots carry what they carry in the input, or nothing that a demand put there.</summary>
    public bool HasNothingElse(int first, int width)
    {
        for (var slot = first; slot < first + width; slot++)
        {
            if (content[slot] >= 0 && content[slot] != upstream[slot])
            {
                return false;
            }
        }

        return true;
    }
}
