//! A network, run by a library but for its depthwise convolutions (docs/decisions/17-own-depthwise.md).

use std::sync::Arc;

use rten::{ModelOptions, NodeId, RunOptions, ThreadPool, Value};
use rten_tensor::prelude::*;
use rten_tensor::{NdTensor, Tensor, TensorView};

use crate::depthwise::Depthwise;

/// A network as `core/print/model/make.py` writes it. Its depthwise convolutions are taken out (those with square weights, a step for
/// each place): of each, what it takes, its weights and its biases are outputs behind the network's own, and what it gives is an
/// input behind the picture.
pub(crate) struct Network {
    rest: rten::Model,
    input: NodeId,
    output: NodeId,
    taken_out: Vec<TakenOut>,
}

/// A layer, what it is given by the rest of the network, and what it gives.
struct TakenOut {
    layer: Depthwise,
    takes: NodeId,
    gives: NodeId,
}

impl Network {
    /// A network from its file; nothing if it is not one.
    pub(crate) fn load(options: &ModelOptions, file: Vec<u8>, threads: &Arc<ThreadPool>) -> Option<Self> {
        let rest = options.load(file).ok()?;
        let (&input, given) = rest.input_ids().split_first()?;
        let (&output, beside) = rest.output_ids().split_first()?;
        let (layers, []) = beside.as_chunks::<3>() else { return None };
        if layers.len() != given.len() {
            return None;
        }
        let taken_out = layers
            .iter()
            .zip(given)
            .map(|(&[takes, weights, biases], &gives)| {
                let constant = |node| -> Option<Tensor<f32>> {
                    let [value] = rest.run_n(vec![], [node], Some(on(threads))).ok()?;
                    value.try_into().ok()
                };
                let weights = constant(weights)?;
                let layer =
                    Depthwise::new(*weights.shape().last()?, weights.to_vec(), constant(biases)?.to_vec())?;
                Some(TakenOut { layer, takes, gives })
            })
            .collect::<Option<Vec<_>>>()?;
        Some(Self { rest, input, output, taken_out })
    }

    /// Whether no layer is taken out of it.
    #[cfg(test)]
    pub(crate) fn is_whole(&self) -> bool {
        self.taken_out.is_empty()
    }

    /// What the network says of a picture; nothing if it fails.
    pub(crate) fn run(&self, threads: &Arc<ThreadPool>, picture: NdTensor<f32, 4>) -> Option<Tensor<f32>> {
        let mut known: Vec<(NodeId, Value)> = vec![(self.input, picture.into())];
        for (at, part) in self.taken_out.iter().enumerate() {
            // What a later layer takes is asked for, too: else what it is made of would be given up.
            let later = self.taken_out.iter().skip(at).map(|part| part.takes);
            let asked: Vec<NodeId> = later.chain([self.output]).collect();
            let inputs = known.into_iter().map(|(node, value)| (node, value.into())).collect();
            known = self.rest.partial_run(inputs, &asked, Some(on(threads))).ok()?;
            let (_, taken) = known.iter().find(|(node, _)| *node == part.takes)?;
            let taken: TensorView<f32> = taken.as_tensor_view()?;
            let shape = taken.shape().to_vec();
            let made = threads.run(|| part.layer.of(taken.data()?, *shape.last()?))?;
            known.push((part.gives, Tensor::from_data(&shape, made).into()));
        }
        let inputs = known.into_iter().map(|(node, value)| (node, value.into())).collect();
        let [output] = self.rest.run_n(inputs, [self.output], Some(on(threads))).ok()?;
        output.try_into().ok()
    }
}

/// How a network is run: on these threads.
fn on(threads: &Arc<ThreadPool>) -> RunOptions {
    RunOptions::default().with_thread_pool(Some(Arc::clone(threads)))
}
