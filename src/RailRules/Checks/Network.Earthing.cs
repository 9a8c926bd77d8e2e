namespace RailRules;

/// <content>Which pole is earthed (grounded).</content>
public sealed partial class Network
{
    /// <summary>The earthing of what feeds a rail or one of its feeds: of each supply, battery and converter above; a converter without isolation has that of its input.</summary>
    /// <param name="from">What feeds it.</param>
    internal IEnumerable<(Earthing? Earthing, Source Source)> EarthingsAbove(Source? from)
    {
        var seen = new HashSet<Source>(ByReference.Instance);
        var pending = new Stack<Source?>([from]);
        while (pending.Count > 0)
        {
            foreach (var source in SourcesAbove(pending.Pop()))
            {
                if (!seen.Add(source))
                {
                    continue;
                }

                switch (source)
                {
                    case Supply supply:
                        yield return (supply.Earthing, supply);
                        break;
                    case Battery battery:
                        yield return (battery.Earthing, battery);
                        break;
                    case Converter { Earthing: null, Isolated: false, Input: { } input } converter when !IsUnknown(converter, nameof(Converter.Earthing)):
                        pending.Push(input);
                        break;
                    case Converter converter:
                        yield return (converter.Earthing, converter);
                        break;
                }
            }
        }
    }
}
